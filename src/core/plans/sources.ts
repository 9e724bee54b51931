import type { Source } from "../source.ts";

export const plansSources = {
  "rfc-5545": {
    citation:
      "B. Desruisseaux (ed.), RFC 5545: Internet Calendaring and Scheduling Core Object Specification, IETF, 2009",
    standing: "published",
    link: "https://www.rfc-editor.org/rfc/rfc5545",
  },
} as const satisfies Record<string, Source>;
