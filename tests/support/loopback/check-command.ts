/** Whether the platform would accept a command's registration.
 *  Source: Discord's documentation, page Application Commands, as of July–August 2026. */

import { Field } from "./field.ts";
import { isObject, type Json, type JsonObject, objectsOf, textOf } from "./json.ts";
import { Problems } from "./refusals.ts";

const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

/** Locale keys. Source: page API Reference, Locales. */
const LOCALES = new Set(
  (
    "id da de en-GB en-US es-ES es-419 fr hr it lt hu nl no pl pt-BR ro fi sv-SE vi tr cs el bg ru uk hi th " +
    "zh-CN ja zh-TW ko"
  ).split(" "),
);

export const optionType = {
  subcommand: 1,
  group: 2,
  string: 3,
  integer: 4,
  boolean: 5,
  user: 6,
  channel: 7,
  role: 8,
  mentionable: 9,
  number: 10,
  attachment: 11,
} as const;

const OPTION_TYPES = Object.values(optionType);
const MAX_SAFE = Number.MAX_SAFE_INTEGER;
const CHARACTERS_PER_COMMAND = 8000;
const PER_SCOPE: Readonly<Record<number, number>> = { 1: 100, 2: 15, 3: 15, 4: 1 };

/** Checks one command as a POST, PUT or PATCH would send it.
 *  Throws: Refusal 400/50035. */
export function checkCommand(body: Json | undefined): void {
  const problems = new Problems();
  checkOneCommand(new Field(body, [], problems));
  problems.throwIfAny();
}

/** Checks the whole list of one scope, as a PUT replaces it.
 *  Throws: Refusal 400/50035. */
export function checkCommandList(body: Json | undefined): void {
  const problems = new Problems();
  const list = new Field(body, [], problems);
  if (!Array.isArray(body)) list.wrong("BASE_TYPE_BAD_TYPE", "Must be a list.");
  const commands = list.items(0, 131);
  for (const command of commands) checkOneCommand(command);
  list.unique(
    commands,
    (command) => `${commandTypeOf(command)} ${String(command.object["name"])}`,
    "Application command names must be unique",
  );
  for (const [type, most] of Object.entries(PER_SCOPE)) {
    const count = commands.filter((command) => commandTypeOf(command) === Number(type)).length;
    if (count > most)
      list.wrong("BASE_TYPE_MAX_LENGTH", `At most ${most} commands of type ${type}, got ${count}.`);
  }
  problems.throwIfAny();
}

function commandTypeOf(command: Field): number {
  const type = command.object["type"];
  return typeof type === "number" ? type : 1;
}

function checkOneCommand(command: Field): void {
  if (!isObject(command.value)) {
    command.wrong("MODEL_TYPE_CONVERT", "Only dictionaries may be used in a ModelType");
    return;
  }
  const type = command.key("type").choice([1, 2, 3, 4]) ?? 1;
  if (type === 1) {
    checkName(command);
    checkDescription(command);
    checkOptions(command, 0);
    if (charactersOf(command.value) > CHARACTERS_PER_COMMAND) {
      command.wrong(
        "APPLICATION_COMMAND_TOO_LARGE",
        `Command exceeds maximum size (${CHARACTERS_PER_COMMAND}), got ${charactersOf(command.value)}.`,
      );
    }
  } else {
    command.key("name").requiredText(1, 32);
    const description = command.key("description");
    if (description.value !== undefined && description.value !== "" && description.value !== null) {
      description.wrong("APPLICATION_COMMAND_DESCRIPTION", "Context menu commands cannot have description");
    }
    if (command.key("options").items(0, 25).length > 0) {
      command
        .key("options")
        .wrong("APPLICATION_COMMAND_OPTIONS", "Context menu commands cannot have options");
    }
  }
  const permissions = command.key("default_member_permissions");
  if (!permissions.isAbsent && !/^\d+$/.test(textOf(permissions.value) ?? "")) {
    permissions.wrong("BASE_TYPE_BAD_TYPE", "Must be a permission set, written in digits.");
  }
  command.key("nsfw").boolean();
  for (const [key, allowed] of [
    ["contexts", [0, 1, 2]],
    ["integration_types", [0, 1]],
  ] as const) {
    const list = command.key(key);
    const items = list.items(1, allowed.length);
    for (const item of items) item.choice(allowed);
    list.unique(items, (item) => item.value, "Set already contains this value");
  }
}

function checkName(owner: Field): void {
  const check = (name: Field) => {
    if (!name.required()) return;
    const text = name.text(1, 32);
    if (text === undefined) return;
    if (!NAME.test(text)) {
      name.wrong("STRING_TYPE_REGEX", `String value did not match validation regex: "${text}".`);
    } else if (text !== text.toLowerCase()) {
      name.wrong(
        "APPLICATION_COMMAND_INVALID_NAME",
        `Command name is invalid: "${text}" is not in lower case.`,
      );
    }
  };
  check(owner.key("name"));
  eachLocale(owner.key("name_localizations"), check);
}

function checkDescription(owner: Field): void {
  owner.key("description").requiredText(1, 100);
  eachLocale(owner.key("description_localizations"), (description) => description.text(1, 100));
}

function eachLocale(dictionary: Field, check: (field: Field) => void): void {
  if (dictionary.isAbsent) return;
  if (!isObject(dictionary.value)) {
    dictionary.wrong("DICT_TYPE_CONVERT", "Only dictionaries may be used in a DictType");
    return;
  }
  for (const [locale, text] of Object.entries(dictionary.value)) {
    const field = dictionary.key(locale);
    if (!LOCALES.has(locale)) field.wrong("BASE_TYPE_CHOICES", `"${locale}" is not a locale.`);
    if (text !== null) check(field);
  }
}

/** depth 0: a command's own; 1: a group's; 2: a subcommand's. */
function checkOptions(owner: Field, depth: 0 | 1 | 2): void {
  const list = owner.key("options");
  const options = list.items(depth === 1 ? 1 : 0, 25);
  if (depth === 1) list.required();
  list.unique(options, (option) => option.object["name"], "Option name is already in use");

  const nested = options.filter((option) => option.object["type"] === 1 || option.object["type"] === 2);
  if (nested.length > 0 && nested.length < options.length) {
    list.wrong("APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "Sub-command and option types cannot be mixed");
  }

  let isOptionalSeen = false;
  for (const option of options) {
    checkOption(option, depth);
    const isRequired = option.object["required"] === true;
    if (isRequired && isOptionalSeen) {
      option.wrong(
        "APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID",
        "Required options must be placed before non-required options",
      );
    }
    if (!isRequired) isOptionalSeen = true;
  }
}

function checkOption(option: Field, depth: 0 | 1 | 2): void {
  if (!isObject(option.value)) {
    option.wrong("MODEL_TYPE_CONVERT", "Only dictionaries may be used in a ModelType");
    return;
  }
  option.key("type").required();
  const type = option.key("type").choice(OPTION_TYPES);
  checkName(option);
  checkDescription(option);
  option.key("required").boolean();
  if (type === undefined) return;

  const isNesting = type === optionType.subcommand || type === optionType.group;
  if (isNesting) {
    const isMisplaced = depth === 2 || (depth === 1 && type === optionType.group);
    if (isMisplaced)
      option.wrong("APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "Sub-command option type is invalid here");
    else checkOptions(option, type === optionType.group ? 1 : 2);
    if (option.object["required"] !== undefined && option.object["required"] !== false) {
      option
        .key("required")
        .wrong("APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID", "Sub-commands cannot be required");
    }
  } else {
    if (depth === 1) {
      option.wrong("APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "A group holds sub-commands only");
    }
    if (!option.key("options").isAbsent && option.key("options").items(0, 25).length > 0) {
      option
        .key("options")
        .wrong("APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "Only sub-commands have options");
    }
  }
  checkOptionDetails(option, type);
}

function checkOptionDetails(option: Field, type: number): void {
  const isText = type === optionType.string;
  const isNumeric = type === optionType.integer || type === optionType.number;
  const only = (key: string, isAllowed: boolean, what: string) => {
    const field = option.key(key);
    const isGiven =
      !field.isAbsent && field.value !== false && !(Array.isArray(field.value) && field.value.length === 0);
    if (isGiven && !isAllowed)
      field.wrong("APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", `Only for ${what} options`);
  };
  only("choices", isText || isNumeric, "string, integer and number");
  only("autocomplete", isText || isNumeric, "string, integer and number");
  only("min_value", isNumeric, "integer and number");
  only("max_value", isNumeric, "integer and number");
  only("min_length", isText, "string");
  only("max_length", isText, "string");
  only("channel_types", type === optionType.channel, "channel");

  const largest = type === optionType.number ? 2 ** 53 : MAX_SAFE;
  const whole = type !== optionType.number;
  const minValue = option.key("min_value").number(-largest, largest, whole);
  const maxValue = option.key("max_value").number(-largest, largest, whole);
  if (minValue !== undefined && maxValue !== undefined && minValue > maxValue) {
    option
      .key("min_value")
      .wrong("APPLICATION_COMMAND_OPTIONS_VALUE_INVALID", "min_value is above max_value");
  }
  const minLength = option.key("min_length").number(0, 6000);
  const maxLength = option.key("max_length").number(1, 6000);
  if (minLength !== undefined && maxLength !== undefined && minLength > maxLength) {
    option
      .key("min_length")
      .wrong("APPLICATION_COMMAND_OPTIONS_VALUE_INVALID", "min_length is above max_length");
  }

  const isCompleting = option.key("autocomplete").boolean() === true;
  const choices = checkChoices(option.key("choices"), type);
  if (isCompleting && choices > 0) {
    option.wrong("APPLICATION_COMMAND_OPTIONS_AUTOCOMPLETE", "Options with choices cannot use autocomplete");
  }
}

/** The choices of an option, or the results of an autocompletion: same shape, same limits. */
export function checkChoices(list: Field, type: number): number {
  const choices = list.items(0, 25);
  for (const choice of choices) {
    choice.key("name").requiredText(1, 100);
    eachLocale(choice.key("name_localizations"), (name) => name.text(1, 100));
    const value = choice.key("value");
    if (!value.required()) continue;
    if (type === optionType.string) value.text(1, 100);
    else if (type === optionType.integer) value.number(-MAX_SAFE, MAX_SAFE);
    else if (type === optionType.number) value.number(-(2 ** 53), 2 ** 53, false);
  }
  list.unique(choices, (choice) => choice.object["name"], "Option choice name is already in use");
  return choices.length;
}

/** All names, descriptions and choice values; the longest localization of each counts. */
function charactersOf(command: JsonObject): number {
  const longest = (key: string, of: JsonObject) => {
    const localized = of[`${key}_localizations`];
    const texts = [of[key], ...(isObject(localized) ? Object.values(localized) : [])];
    return Math.max(0, ...texts.map((text) => (typeof text === "string" ? text.length : 0)));
  };
  let count = longest("name", command) + longest("description", command);
  for (const option of objectsOf(command["options"])) count += charactersOf(option);
  for (const choice of objectsOf(command["choices"])) {
    const value = choice["value"];
    count += longest("name", choice) + (value === undefined ? 0 : String(value).length);
  }
  return count;
}
