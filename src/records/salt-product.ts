import type { Estimate } from "../core/quantity/estimate.ts";
import type { YieldFactor } from "../core/water/salt-product.ts";
import type { MemberId } from "./ids.ts";

/** A salt mix as one member found it: the share of it that is salt. */
export interface SaltProduct {
  /** The member's own word for it. */
  readonly name: string;
  readonly yieldFactor: Estimate<YieldFactor>;
  /** When it was measured; UTC, ISO 8601. */
  readonly at: string;
}

export interface SaltProductRecords {
  /** Last measured first. */
  of(member: MemberId): readonly SaltProduct[];
  put(member: MemberId, product: SaltProduct): void;
}
