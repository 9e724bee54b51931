/** One sentence per code, made from the code's figures. A code without a sentence does not compile. */
export type Wording<Figures> = { readonly [C in keyof Figures]: (figures: Figures[C]) => string };
