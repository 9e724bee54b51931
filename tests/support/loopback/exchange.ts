/** What a member sees happen after they did something: the view of an interaction that tests read. */

import { callbackType, type Interaction } from "./interaction.ts";
import { isObject, type JsonObject, objectsOf, textOf } from "./json.ts";
import type { Message } from "./message.ts";

export interface InitialResponse {
  /** 4 message, 5 deferred, 6 deferred update, 7 update, 8 choices, 9 modal. */
  readonly type: number;
  readonly data: JsonObject;
  readonly isEphemeral: boolean;
  readonly isDeferred: boolean;
}

export interface Choice {
  readonly name: string;
  readonly value: string | number;
}

export class Exchange {
  readonly interaction: Interaction;

  constructor(interaction: Interaction) {
    this.interaction = interaction;
  }

  /** False when the window closed first: the member reads "The application did not respond". */
  get isAnswered(): boolean {
    return this.interaction.isAnswered;
  }

  /** Throws: Error when the bot did not answer in time. */
  get response(): InitialResponse {
    const { callback, data, original } = this.interaction;
    if (callback === undefined) throw new Error("The application did not respond");
    return {
      type: callback,
      data,
      isEphemeral: original?.isEphemeral ?? false,
      isDeferred: callback === callbackType.deferredMessage || callback === callbackType.deferredUpdate,
    };
  }

  /** Event sent to callback received. */
  get ackMs(): number {
    const { sentAt, answeredAt } = this.interaction;
    if (sentAt === undefined || answeredAt === undefined) throw new Error("The application did not respond");
    return answeredAt - sentAt;
  }

  /** The first message in its latest state.
   *  Throws: Error when there is none, as after a modal. */
  get message(): Message {
    const { original } = this.interaction;
    if (original === undefined) throw new Error("This exchange has no message");
    return original;
  }

  /** The original and the follow-ups in their latest states, deleted ones left out. */
  get messages(): Message[] {
    const { original, followUps } = this.interaction;
    const all = original === undefined ? followUps : [original, ...followUps];
    return all.filter((message) => !message.isDeleted);
  }

  /** The suggestions of an autocompletion. */
  get choices(): Choice[] {
    return objectsOf(this.response.data["choices"]).map((choice) => {
      const value = choice["value"];
      return {
        name: textOf(choice["name"]) ?? "",
        value: typeof value === "number" ? value : (textOf(value) ?? ""),
      };
    });
  }

  /** The modal that was opened.
   *  Throws: Error when the response was something else. */
  get modal(): JsonObject {
    const { type, data } = this.response;
    if (type !== callbackType.modal) throw new Error(`The response was of type ${type}, no modal`);
    return isObject(data) ? data : {};
  }

  /** Waits until a deferred response has been filled in (or withdrawn), and gives the message. */
  async final(timeoutMs = 5000): Promise<Message> {
    await this.until(() => {
      const { original, callback, isOriginalEdited } = this.interaction;
      if (original?.isDeleted === true) return true;
      if (callback === callbackType.deferredUpdate) return isOriginalEdited;
      return original !== undefined && !original.isLoading;
    }, timeoutMs);
    return this.message;
  }

  /** Waits until the exchange looks as asked for. */
  async until(isSo: (exchange: Exchange) => boolean, timeoutMs = 5000): Promise<void> {
    if (isSo(this)) return;
    await new Promise<void>((resolve, reject) => {
      const stop = this.interaction.onChange(() => {
        if (!isSo(this)) return;
        clearTimeout(timer);
        stop();
        resolve();
      });
      const timer = setTimeout(() => {
        stop();
        reject(new Error(`The exchange did not come to what was waited for within ${timeoutMs} ms`));
      }, timeoutMs);
    });
  }
}
