import type { BreedingRecords } from "./breeding.ts";
import type { HelpRecords } from "./help.ts";
import type { InstrumentRecords, LogRecords } from "./log.ts";
import type { MemberRecords } from "./member.ts";
import type { PlanRecords } from "./plan.ts";
import type { SaltProductRecords } from "./salt-product.ts";
import type { TankRecords } from "./tank.ts";
import type { TargetRecords } from "./target.ts";
import type { UploadRecords } from "./upload.ts";

/** All that is remembered, behind interfaces: commands never meet the database. */
export interface Records {
  readonly members: MemberRecords;
  readonly tanks: TankRecords;
  readonly log: LogRecords;
  readonly instruments: InstrumentRecords;
  readonly saltProducts: SaltProductRecords;
  readonly targets: TargetRecords;
  readonly uploads: UploadRecords;
  readonly breeding: BreedingRecords;
  readonly plans: PlanRecords;
  readonly help: HelpRecords;
}
