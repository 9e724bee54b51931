/** One interaction from its event to the death of its token.
 *  Source: Discord's documentation, page Receiving and Responding, as of July–August 2026. */

import { performance } from "node:perf_hooks";
import { checkChoices, optionType } from "./check-command.ts";
import { checkModal } from "./check-components.ts";
import { flag } from "./check-message.ts";
import { Field } from "./field.ts";
import { isObject, type Json, type JsonObject, numberOf } from "./json.ts";
import { Message, writeMessage } from "./message.ts";
import type { UploadedFile } from "./multipart.ts";
import { Problems, refuse } from "./refusals.ts";
import type { Channel, Guild, User, World } from "./world.ts";

export const interactionType = { command: 2, component: 3, autocomplete: 4, modalSubmit: 5 } as const;

export const callbackType = {
  message: 4,
  deferredMessage: 5,
  deferredUpdate: 6,
  update: 7,
  choices: 8,
  modal: 9,
} as const;

const CALLBACKS: Readonly<Record<number, readonly number[]>> = {
  [interactionType.command]: [4, 5, 9],
  [interactionType.component]: [4, 5, 6, 7, 9],
  [interactionType.autocomplete]: [8],
  [interactionType.modalSubmit]: [4, 5],
};

const FOLLOW_UPS_OF_A_USER_INSTALL = 5;

export interface InteractionOptions {
  readonly world: World;
  readonly type: number;
  readonly user: User;
  readonly guild: Guild | undefined;
  readonly channel: Channel;
  /** `authorizing_integration_owners`: key 0 the guild, key 1 the installing user. */
  readonly owners: JsonObject;
  /** The message pressed, or the one whose button opened the modal. */
  readonly source?: Message;
  /** The member may not use external apps here: answers of a user install become ephemeral. */
  readonly isForcedEphemeral: boolean;
  readonly windowMs: number;
  readonly tokenLifeMs: number;
  /** The type of the option being completed, for an autocompletion. */
  readonly focusedType?: number;
}

export class Interaction {
  readonly id: string;
  readonly token: string;
  readonly options: InteractionOptions;
  readonly createdAt: number;
  /** Milliseconds of the machine's monotonic clock. */
  sentAt: number | undefined;
  answeredAt: number | undefined;
  /** When the member saw the answer itself: at once, or with the first edit after a deferral. */
  filledAt: number | undefined;
  callback: number | undefined;
  /** Body of the accepted callback. */
  data: JsonObject = {};
  original: Message | undefined;
  isOriginalEdited = false;
  readonly followUps: Message[] = [];
  #isExpired = false;
  readonly #watchers = new Set<() => void>();

  constructor(options: InteractionOptions) {
    this.options = options;
    this.id = options.world.snowflake();
    this.token = `loopback-token-of-${this.id}-${"x".repeat(120)}`;
    this.createdAt = options.world.now();
  }

  get isAnswered(): boolean {
    return this.callback !== undefined;
  }

  /** Over without an answer: the member reads "The application did not respond". */
  get isExpired(): boolean {
    return this.#isExpired;
  }

  get isTokenDead(): boolean {
    return this.#isExpired || this.#age() > this.options.tokenLifeMs;
  }

  /** Ends the interaction when its time is over and nothing came. */
  expireIfDue(): void {
    if (this.isAnswered || this.#isExpired || this.#age() < this.options.windowMs) return;
    this.#isExpired = true;
    this.#changed();
  }

  onChange(watcher: () => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  /** The initial response. `receivedAt` is on the monotonic clock.
   *  Throws: Refusal 10062 when late, 40060 when answered before, 50035 for a bad body. */
  respond(body: JsonObject, files: readonly UploadedFile[], receivedAt: number): void {
    if (this.isAnswered) throw refuse.alreadyAcknowledged();
    if (this.#isExpired || this.#age() > this.options.windowMs) throw refuse.unknownInteraction();
    const problems = new Problems();
    const root = new Field(body, [], problems);
    root.key("type").required();
    const type = root.key("type").choice(this.#allowedCallbacks());
    problems.throwIfAny();
    if (type === undefined) return;

    const data = isObject(body["data"]) ? body["data"] : {};
    this.#carryOut(type, data, files);
    this.callback = type;
    this.data = data;
    this.answeredAt = receivedAt;
    const isDeferred = type === callbackType.deferredMessage || type === callbackType.deferredUpdate;
    if (!isDeferred) this.filledAt = receivedAt;
    this.#changed();
  }

  /** Throws: Refusal 10015 before the first response, 50027 after the token's death, 10008 where there is none. */
  messageOf(id: string): Message {
    this.#demandLiveToken();
    const message =
      id === "@original" || id === this.original?.id
        ? this.original
        : this.followUps.find((followUp) => followUp.id === id);
    if (message === undefined || message.isDeleted) throw refuse.unknownMessage();
    return message;
  }

  edit(id: string, body: JsonObject, files: readonly UploadedFile[]): Message {
    const message = this.messageOf(id);
    this.#write(message, body, files, true);
    if (message === this.original) {
      this.isOriginalEdited = true;
      this.filledAt ??= performance.now();
    }
    this.#changed();
    return message;
  }

  delete(id: string): void {
    this.messageOf(id).delete();
    this.#changed();
  }

  /** A follow-up; while a deferred response is pending it acts as that response's edit. */
  followUp(body: JsonObject, files: readonly UploadedFile[]): Message {
    this.#demandLiveToken();
    if (this.original?.isLoading === true) return this.edit("@original", body, files);
    const isUserInstallOnly = this.options.owners["0"] === undefined;
    if (isUserInstallOnly && this.followUps.length >= FOLLOW_UPS_OF_A_USER_INSTALL)
      throw refuse.tooManyFollowUps();
    const message = this.#newMessage();
    this.#write(message, body, files, false);
    message.channel.messages.set(message.id, message);
    this.followUps.push(message);
    this.#changed();
    return message;
  }

  #age(): number {
    return this.options.world.now() - this.createdAt;
  }

  #allowedCallbacks(): readonly number[] {
    const allowed = CALLBACKS[this.options.type] ?? [];
    const isModalOfMessage =
      this.options.type === interactionType.modalSubmit && this.options.source !== undefined;
    return isModalOfMessage ? [...allowed, callbackType.deferredUpdate, callbackType.update] : allowed;
  }

  #carryOut(type: number, data: JsonObject, files: readonly UploadedFile[]): void {
    if (type === callbackType.message) {
      const message = this.#newMessage();
      this.#write(message, data, files, false);
      message.channel.messages.set(message.id, message);
      this.original = message;
    } else if (type === callbackType.deferredMessage) {
      this.original = this.#defer(data);
    } else if (type === callbackType.deferredUpdate) {
      this.original = this.#source();
    } else if (type === callbackType.update) {
      const message = this.#source();
      this.#write(message, data, files, true);
      this.original = message;
      this.isOriginalEdited = true;
    } else if (type === callbackType.choices) {
      const problems = new Problems();
      const choices = new Field(data, ["data"], problems).key("choices");
      choices.required();
      checkChoices(choices, this.options.focusedType ?? optionType.string);
      problems.throwIfAny();
    } else {
      const problems = new Problems();
      checkModal(new Field(data, ["data"], problems));
      problems.throwIfAny();
    }
  }

  /** The message a component sits on. */
  #source(): Message {
    const { source } = this.options;
    if (source === undefined || source.isDeleted) throw refuse.unknownMessage();
    return source;
  }

  #defer(data: JsonObject): Message {
    const problems = new Problems();
    const flags = numberOf(data["flags"]) ?? 0;
    if ((flags & ~flag.ephemeral) !== 0) {
      problems.add(
        ["data", "flags"],
        "MESSAGE_FLAGS",
        "A deferred message may carry only the EPHEMERAL flag",
      );
    }
    problems.throwIfAny();
    const message = this.#newMessage();
    message.flags |= (flags & flag.ephemeral) | flag.loading;
    message.channel.messages.set(message.id, message);
    return message;
  }

  #newMessage(): Message {
    const { world, channel, type, user, owners, isForcedEphemeral } = this.options;
    const origin = { interactionId: this.id, interactionType: type, user, owners };
    const message = new Message(world, channel, world.bot, origin);
    if (isForcedEphemeral) message.flags |= flag.ephemeral;
    return message;
  }

  #write(message: Message, body: JsonObject, files: readonly UploadedFile[], isEdit: boolean): void {
    const { world } = this.options;
    writeMessage(world, message, body, files, { mayBeEphemeral: true, isInteractionResponse: true, isEdit });
    if (!isEdit) return;
    message.editedAt = world.now();
    message.editCount += 1;
  }

  #demandLiveToken(): void {
    if (this.isTokenDead) throw refuse.deadToken();
    if (!this.isAnswered) throw refuse.unknownWebhook();
  }

  #changed(): void {
    for (const watcher of [...this.#watchers]) watcher();
  }
}

/** The body of a callback's answer under `with_response=true`. */
export function callbackAnswer(interaction: Interaction, message: Json | undefined): JsonObject {
  const { original, callback } = interaction;
  return {
    interaction: {
      id: interaction.id,
      type: interaction.options.type,
      ...(original === undefined
        ? {}
        : {
            response_message_id: original.id,
            response_message_loading: original.isLoading,
            response_message_ephemeral: original.isEphemeral,
          }),
    },
    resource: { type: callback ?? 0, ...(message === undefined ? {} : { message }) },
  };
}
