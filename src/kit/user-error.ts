/** Something the member can put right. The message says how, and is shown as written. */
export class UserError extends Error {
  override readonly name = "UserError";
  readonly code: "bad-input" | "not-found" | "not-yours" | "not-now";
  constructor(code: UserError["code"], message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}
