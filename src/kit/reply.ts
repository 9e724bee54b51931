import type { Habits } from "../core/quantity/read.ts";
import type { CautionLevel } from "../core/result.ts";
import type { CardPlace } from "../records/help.ts";
import type { ChartSpec } from "./chart.ts";
import type { PedigreeSpec, PumpSpec, RotaSpec, SystemSpec } from "./system-spec.ts";

/** Who may see a reply: the member who asked, or everyone in the place where it was asked. */
export type Audience = "asker" | "channel";

export interface ReplyCaution {
  readonly level: CautionLevel;
  readonly text: string;
}

export interface ReplyTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A file to hand over: written beside the terminal, attached on a chat platform. */
export interface ReplyFile {
  readonly name: string;
  readonly mediaType: string;
  /** UTF-8 text or bytes in base64. */
  readonly content: string;
  readonly encoding: "utf8" | "base64";
  /** What it shows, in words, for those who cannot see it. */
  readonly altText: string;
}

/** Everything behind a figure, shown when the member opens the working. */
export interface Working {
  /** Each input: its name, what was typed (or where it came from), how it was understood. */
  readonly inputs: readonly { readonly name: string; readonly typed: string; readonly readAs: string }[];
  /** The formula in words. */
  readonly steps: readonly string[];
  readonly constants: readonly {
    readonly name: string;
    readonly value: string;
    readonly source: string;
  }[];
  readonly assumptions: readonly string[];
  readonly sources: readonly {
    readonly citation: string;
    readonly standing: string;
    readonly link?: string;
  }[];
}

/** What a command says, as plain data. Text is plain: a front escapes whatever its markup would read. */
export interface Reply {
  readonly kind: "reply";
  /** False when the question was refused or could not be read; a script then ends with a failure. */
  readonly ok: boolean;
  readonly title: string;
  /** The number, first and large. */
  readonly headline?: string;
  /** What it rests on and what to do: short lines. */
  readonly body: readonly string[];
  readonly table?: ReplyTable;
  readonly chart?: ChartSpec;
  /** Drawn where there is no chart: the row of containers, or a pump against its pipes. */
  readonly picture?: SystemSpec | PumpSpec | RotaSpec | PedigreeSpec;
  readonly files?: readonly ReplyFile[];
  readonly cautions: readonly ReplyCaution[];
  /** One line: the method and how firmly it stands. */
  readonly basis?: string;
  readonly working?: Working;
  /** Set when the answer is about a help case: a front keeps the case's card up to date. */
  readonly helpCase?: HelpCaseNote;
  /** Cards that have to go from where they stand: the member was erased, or the case deleted. */
  readonly goneCards?: readonly CardPlace[];
  /** Set when the member's record was erased: the exchange itself is not kept either. */
  readonly leavesNoTrace?: true;
  readonly audience: Audience;
}

/** What a front has to know to carry a help case: its thread, its card and the buttons under it. */
export interface HelpCaseNote {
  readonly number: number;
  /** A name for its thread, at most 100 characters, with nothing of the newcomer's own words. */
  readonly threadName: string;
  /** The card as it stands now, whoever reads it. */
  readonly face: Pick<Reply, "title" | "body" | "cautions"> & { readonly headline?: string };
  readonly card?: CardPlace;
  /** The channel or forum where new help threads go; absent for wherever it was asked. */
  readonly home?: string;
  readonly isNew: boolean;
  /** Set when this very answer found that life is in danger. */
  readonly isNewAlarm: boolean;
  readonly isOpen: boolean;
  /** Life is in danger by what is known: the card is shown to all at once. */
  readonly isUrgent: boolean;
  /** What is asked next, and which field of the form its answer goes into. */
  readonly next?: { readonly field: string; readonly text: string; readonly example: string };
  /** What is said to the one who pressed or typed, where the card stands elsewhere. */
  readonly remark: string;
}

/** What is put into a request when a choice is taken: option texts, and answers to confirmations. */
export interface Settled {
  readonly options?: Readonly<Record<string, string>>;
  readonly answers?: Readonly<Record<string, string>>;
}

/** One question back to the member. Taking a choice runs the same command again with more settled. */
export interface Question {
  readonly kind: "question";
  /** True when it stands because something typed could not be read. */
  readonly isMistake: boolean;
  readonly title: string;
  readonly text: string;
  /** Figures to be read before answering. */
  readonly body: readonly string[];
  readonly cautions: readonly ReplyCaution[];
  readonly choices: readonly QuestionChoice[];
  /** The option that a typed answer fills, when one may be typed. */
  readonly typed?: { readonly option: string; readonly label: string; readonly example: string };
  readonly audience: Audience;
}

export interface QuestionChoice {
  readonly label: string;
  readonly settle: Settled;
  /** A habit of the member to be remembered when this choice is taken. */
  readonly remember?: Habits;
  /** "go" for the expected way on, "stop" for calling it off. */
  readonly tone?: "go" | "stop";
}

export type Outcome = Reply | Question;

/** A command hands over to another one, whose answer the member gets with `understood` on top. */
export interface Forward {
  readonly kind: "forward";
  /** "salt mix": the command that answers. */
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
  /** How the question was understood, and what to type for the same; one line each. */
  readonly understood: readonly string[];
}
