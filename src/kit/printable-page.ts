/** A page to print and hang up: plain data, in sections. */
export interface PrintablePage {
  readonly title: string;
  /** Under the title: when it was made, and of what. */
  readonly note: string;
  readonly sections: readonly PrintableSection[];
}

export interface PrintableSection {
  readonly heading: string;
  /** Numbered where the order matters. */
  readonly isOrdered: boolean;
  readonly lines: readonly string[];
}

const STYLE = `
  @page { margin: 12mm }
  body { font: 12pt/1.35 system-ui, sans-serif; color: #111; background: #fff; max-width: 46rem; margin: 1rem auto; padding: 0 1rem }
  h1 { font-size: 20pt; margin: 0 }
  h2 { font-size: 13pt; margin: 1rem 0 .25rem; border-bottom: 2px solid #111 }
  p { margin: .25rem 0 }
  ol, ul { margin: .25rem 0; padding-left: 1.6rem }
  li { margin: .15rem 0; overflow-wrap: anywhere }
  section { break-inside: avoid }
`;

/** The page as one file that needs nothing else: no script, no link, no picture from elsewhere. */
export function printableHtml({ title, note, sections }: PrintablePage): string {
  const body = sections.map(({ heading, isOrdered, lines }) => {
    const list = isOrdered ? "ol" : "ul";
    const items = lines.map((line) => `    <li>${escaped(line)}</li>`).join("\n");
    return `  <section>\n  <h2>${escaped(heading)}</h2>\n  <${list}>\n${items}\n  </${list}>\n  </section>`;
  });
  return [
    "<!doctype html>",
    '<html lang="en">',
    '<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}</title><style>${STYLE}</style></head>`,
    "<body>",
    `  <h1>${escaped(title)}</h1>`,
    `  <p>${escaped(note)}</p>`,
    ...body,
    "</body></html>",
    "",
  ].join("\n");
}

/** The same page as plain text. */
export function printableText({ title, note, sections }: PrintablePage): string {
  return [
    title.toUpperCase(),
    note,
    ...sections.flatMap(({ heading, isOrdered, lines }) => [
      "",
      heading.toUpperCase(),
      ...lines.map((line, index) => (isOrdered ? `${index + 1}. ${line}` : `- ${line}`)),
    ]),
    "",
  ].join("\n");
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => `&#${mark.codePointAt(0)};`);
}
