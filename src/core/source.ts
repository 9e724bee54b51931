/** One entry of the bibliography. */
export interface Source {
  /** Author, year, title, place: enough to find the work. */
  readonly citation: string;
  /** How firmly the figures taken from it are known. "from memory" means the work was not re-read. */
  readonly standing:
    | "published"
    | "reference library"
    | "from memory"
    | "common practice, no source"
    | "assumption"
    | "definition";
  /** A digital object identifier or a lasting address, where one is known for certain. */
  readonly link?: string;
}
