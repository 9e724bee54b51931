import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { optional, quantity, tankOption } from "../../src/kit/index.ts";

export const flowOption = optional(
  quantity.flow("What really flows; your tank's noted flow if left out", "6000 L/h"),
);
export const tank = optional(tankOption());

export function showFlow(flow: Estimate): string {
  return showEstimate(flow, "L/h", { significant: 3 });
}
