import type { Role } from "./container.ts";

/** First match wins: an "algae filter" is an algae tank, a "pump reservoir" is a pump container. */
const ROLE_WORDS: readonly (readonly [Role, RegExp])[] = [
  ["algae tank", /\b(algae|algal|refugium|fuge|scrubber|macro\s?algae|mangroves?)\b/i],
  ["display", /\b(display|show tank|main tank|lagoon)\b/i],
  ["pump container", /\b(sump|pump|return)\b/i],
  ["reservoir", /\b(reservoir|top[ -]?off|top[ -]?up|ato|ro\/?di|mixing|mix|storage|fresh ?water)\b/i],
  ["filter", /\b(filters?|filtration|settling|settler|drums?|media|biofilter|reactor|skimmer|canister)\b/i],
  ["other", /\bother\b/i],
];

/** What a container is for, as far as its name tells. Source: common-practice. */
export function roleOf(name: string): Role | undefined {
  return ROLE_WORDS.find(([, words]) => words.test(name))?.[0];
}

/** A reservoir's water waits beside the system unless said otherwise; all other water is in it. */
export function isUsuallyInSystem(role: Role): boolean {
  return role !== "reservoir";
}
