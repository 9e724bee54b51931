/** One value of the record, as far as a summary needs it. */
export interface Dated {
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly best: number;
}

export interface RecordSummary<R extends Dated> {
  readonly inside: readonly R[];
  readonly lowest?: R;
  readonly highest?: R;
  /** The middle value of those inside: what one odd reading does not move. */
  readonly median?: number;
  /** The nearest before and after, where nothing lies inside. */
  readonly before?: R;
  readonly after?: R;
}

/** What a record holds between two moments (`from` counts, `to` does not). Readings in any order. */
export function summaryBetween<R extends Dated>(
  readings: readonly R[],
  from: number,
  to: number,
): RecordSummary<R> {
  const inOrder = [...readings].sort((a, b) => a.at - b.at);
  const inside = inOrder.filter(({ at }) => at >= from && at < to);
  const before = inOrder.filter(({ at }) => at < from).at(-1);
  const after = inOrder.find(({ at }) => at >= to);
  const byValue = [...inside].sort((a, b) => a.best - b.best);
  const lowest = byValue[0];
  const highest = byValue.at(-1);
  const [low, high] = [
    byValue[Math.floor((byValue.length - 1) / 2)],
    byValue[Math.floor(byValue.length / 2)],
  ];
  return {
    inside,
    ...(lowest === undefined ? {} : { lowest }),
    ...(highest === undefined ? {} : { highest }),
    ...(low === undefined || high === undefined ? {} : { median: (low.best + high.best) / 2 }),
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
  };
}
