/** What reading a member's text can lead to. Nothing is guessed: where two meanings are likely, it asks. */
export type Read<T> =
  | {
      readonly kind: "read";
      readonly value: T;
      /** How it was understood, to be said back: "200 L ± 10 %", "1.0260 SG (25/25 °C) = 34.5 ppt". */
      readonly readAs: string;
    }
  | {
      readonly kind: "ask";
      /** One short question. */
      readonly question: string;
      /** Each choice's `text` takes the place of what was typed and reads without asking again. */
      readonly choices: readonly Choice[];
    }
  | {
      readonly kind: "unreadable";
      /** What was read and what would work, as one sentence or two. */
      readonly message: string;
    };

export interface Choice {
  readonly label: string;
  readonly text: string;
  /** The habit this choice reveals, to be remembered so that it is asked once only. */
  readonly remember?: Habits;
}

/** Two temperatures without which a specific gravity means nothing, °C. */
export interface GravityScale {
  readonly sampleC: number;
  readonly referenceC: number;
}

/** What is already known of how this member writes and measures; an absent habit is asked about. */
export interface Habits {
  readonly gallon?: "US" | "imperial";
  /** The mark between whole and part in the member's numbers. */
  readonly decimal?: "point" | "comma";
  readonly gravity?: GravityScale;
  /** What a conductivity display shows: already brought to 25 °C, or as it is at the sample's temperature. */
  readonly conductivity?: "at 25 °C" | "as measured";
}

export function isRead<T>(read: Read<T>): read is Extract<Read<T>, { kind: "read" }> {
  return read.kind === "read";
}
