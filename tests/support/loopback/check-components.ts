/** Whether the platform would accept the components of a message or of a modal.
 *  Source: Discord's documentation, page Component Reference, as of July–August 2026. */

import type { Field } from "./field.ts";
import { isObject, type JsonObject, objectsOf, textOf } from "./json.ts";

export const component = {
  row: 1,
  button: 2,
  stringSelect: 3,
  textInput: 4,
  userSelect: 5,
  roleSelect: 6,
  mentionableSelect: 7,
  channelSelect: 8,
  section: 9,
  text: 10,
  thumbnail: 11,
  gallery: 12,
  file: 13,
  separator: 14,
  container: 17,
  label: 18,
  fileUpload: 19,
  radioGroup: 21,
  checkboxGroup: 22,
  checkbox: 23,
} as const;

export const SELECTS: readonly number[] = [3, 5, 6, 7, 8];
const V2_TOP_LEVEL: readonly number[] = [1, 9, 10, 12, 13, 14, 17];
const IN_CONTAINER: readonly number[] = [1, 9, 10, 12, 13, 14];
const IN_LABEL: readonly number[] = [3, 4, 5, 6, 7, 8, 19, 21, 22, 23];
const V2_COMPONENTS = 40;
/** All text displays of one message together.
 *  From memory of the platform's behaviour; the documentation names 4,000 for each. */
const V2_TEXT = 4000;

/** Every component of a tree, outer ones first. */
export function flatten(components: readonly JsonObject[]): JsonObject[] {
  return components.flatMap((item) => [
    item,
    ...flatten(objectsOf(item["components"])),
    ...flatten([item["accessory"], item["component"]].filter(isObject)),
  ]);
}

export function checkMessageComponents(
  list: Field,
  isV2: boolean,
  isFileKnown: (name: string) => boolean,
): void {
  const items = list.items(0, isV2 ? V2_COMPONENTS : 5);
  const all = flatten(objectsOf(list.value));
  if (isV2) {
    if (all.length > V2_COMPONENTS) {
      list.wrong(
        "BASE_TYPE_BAD_LENGTH",
        `At most ${V2_COMPONENTS} components, nested ones counted, got ${all.length}.`,
      );
    }
    const characters = all
      .filter((item) => item["type"] === component.text)
      .reduce((sum, item) => sum + (textOf(item["content"])?.length ?? 0), 0);
    if (characters > V2_TEXT) {
      list.wrong(
        "COMPONENT_DISPLAYABLE_TEXT_SIZE_EXCEEDED",
        `Components displayable text size exceeds maximum size of ${V2_TEXT}`,
      );
    }
    for (const item of items) checkInMessage(item, V2_TOP_LEVEL, isFileKnown);
  } else {
    for (const item of items) checkInMessage(item, [component.row], isFileKnown);
  }
  checkUniqueIds(list, all);
}

export function checkModal(modal: Field): void {
  modal.key("title").requiredText(1, 45);
  modal.key("custom_id").requiredText(1, 100);
  const list = modal.key("components");
  list.required();
  for (const item of list.items(1, 5)) {
    const type = item.key("type").choice([component.row, component.text, component.label]);
    if (type === component.text) item.key("content").requiredText(1, 4000);
    if (type === component.row) {
      for (const input of item.key("components").items(1, 1)) {
        if (input.key("type").choice([component.textInput]) === undefined) continue;
        input.key("label").requiredText(1, 45);
        checkTextInput(input);
      }
    }
    if (type === component.label) checkLabel(item);
  }
  checkUniqueIds(list, flatten(objectsOf(list.value)));
}

function checkUniqueIds(list: Field, all: readonly JsonObject[]): void {
  for (const key of ["custom_id", "id"]) {
    const ids = all.map((item) => item[key]).filter((id) => id !== undefined && id !== 0);
    if (new Set(ids).size < ids.length) {
      list.wrong("COMPONENT_CUSTOM_ID_DUPLICATED", `Component ${key} cannot be duplicated`);
    }
  }
}

type IsFileKnown = (name: string) => boolean;

function checkInMessage(item: Field, allowed: readonly number[], isFileKnown: IsFileKnown): void {
  if (!isObject(item.value)) {
    item.wrong("MODEL_TYPE_CONVERT", "Only dictionaries may be used in a ModelType");
    return;
  }
  item.key("type").required();
  const type = item.key("type").choice(allowed);
  if (type === undefined) return;
  item.key("id").number(0, 2 ** 31 - 1);
  if (type === component.row) checkRow(item);
  else if (type === component.text) item.key("content").requiredText(1, 4000);
  else if (type === component.section) checkSection(item, isFileKnown);
  else if (type === component.gallery) {
    item.key("items").required();
    for (const image of item.key("items").items(1, 10)) checkMedia(image, isFileKnown);
  } else if (type === component.file) {
    checkMediaUrl(item.key("file").key("url"), isFileKnown, true);
    item.key("spoiler").boolean();
  } else if (type === component.separator) {
    item.key("divider").boolean();
    item.key("spacing").choice([1, 2]);
  } else if (type === component.container) {
    item.key("accent_color").number(0, 0xffffff);
    item.key("spoiler").boolean();
    item.key("components").required();
    for (const inner of item.key("components").items(1, V2_COMPONENTS))
      checkInMessage(inner, IN_CONTAINER, isFileKnown);
  }
}

function checkRow(row: Field): void {
  const list = row.key("components");
  list.required();
  const items = list.items(1, 5);
  const selects = items.filter((item) => item.object["type"] !== component.button);
  if (selects.length > 0 && items.length > 1) {
    list.wrong("COMPONENT_LAYOUT_WIDTH_EXCEEDED", "A row holds up to five buttons or one select");
  }
  for (const item of items) {
    const type = item.key("type").choice([component.button, ...SELECTS]);
    if (type === component.button) checkButton(item);
    else if (type !== undefined) checkSelect(item, type, false);
  }
}

function checkButton(button: Field): void {
  button.key("style").required();
  const style = button.key("style").choice([1, 2, 3, 4, 5, 6]);
  button.key("label").text(0, 80);
  button.key("disabled").boolean();
  const hasFace = (textOf(button.object["label"]) ?? "") !== "" || isObject(button.object["emoji"]);
  if (!hasFace && style !== 6) button.wrong("BUTTON_COMPONENT_INVALID", "A button needs a label or an emoji");
  if (style === 5) {
    checkUrl(button.key("url"), 512);
    refuseKey(button, "custom_id", "A link button has no custom id");
  } else if (style === 6) {
    button.key("sku_id").required();
    button.key("sku_id").snowflake();
    refuseKey(button, "custom_id", "A premium button has no custom id");
  } else {
    button.key("custom_id").requiredText(1, 100);
    refuseKey(button, "url", "Only a link button has a URL");
  }
}

function refuseKey(item: Field, key: string, message: string): void {
  if (!item.key(key).isAbsent) item.key(key).wrong("BUTTON_COMPONENT_INVALID", message);
}

function checkUrl(url: Field, max: number): void {
  const text = url.requiredText(1, max);
  if (text !== undefined && !/^(https?|discord):\/\/[^\s/]+/.test(text)) {
    url.wrong("URL_TYPE_INVALID_SCHEME", `Scheme "${text.split(":")[0]}" is not supported.`);
  }
}

function checkSelect(select: Field, type: number, isInModal: boolean): void {
  select.key("custom_id").requiredText(1, 100);
  select.key("placeholder").text(0, 150);
  const min = select.key("min_values").number(0, 25) ?? 1;
  const max = select.key("max_values").number(1, 25) ?? 1;
  if (min > max) select.key("min_values").wrong("COMPONENT_MIN_VALUES", "min_values is above max_values");
  if (type === component.stringSelect) {
    const list = select.key("options");
    list.required();
    const options = list.items(1, 25);
    for (const option of options) checkSelectOption(option);
    list.unique(options, (option) => option.object["value"], "The specified option value is already used");
    if (max > Math.max(1, options.length))
      select.key("max_values").wrong("COMPONENT_MAX_VALUES", "More than there are options");
    if (options.filter((option) => option.object["default"] === true).length > max) {
      list.wrong("COMPONENT_DEFAULTS", "More defaults than max_values");
    }
  } else {
    select.key("default_values").items(0, max);
  }
  if (isInModal) checkModalRules(select, min);
  else select.key("disabled").boolean();
}

function checkSelectOption(option: Field): void {
  option.key("label").requiredText(1, 100);
  option.key("value").requiredText(1, 100);
  option.key("description").text(0, 100);
  option.key("default").boolean();
}

function checkModalRules(item: Field, minValues: number): void {
  if (!item.key("disabled").isAbsent) item.key("disabled").wrong("COMPONENT_DISABLED", "Not in a modal");
  const isRequired = item.key("required").boolean() ?? true;
  if (minValues === 0 && isRequired)
    item.key("min_values").wrong("COMPONENT_MIN_VALUES", "0 needs required: false");
}

function checkLabel(label: Field): void {
  label.key("label").requiredText(1, 45);
  label.key("description").text(0, 100);
  const inner = label.key("component");
  if (!inner.required()) return;
  const type = inner.key("type").choice(IN_LABEL);
  if (type === undefined) return;
  if (type === component.textInput) {
    if (!inner.key("label").isAbsent)
      inner.key("label").wrong("COMPONENT_LABEL", "The label stands outside the input");
    checkTextInput(inner);
  } else if (SELECTS.includes(type)) {
    checkSelect(inner, type, true);
  } else if (type === component.fileUpload) {
    inner.key("custom_id").requiredText(1, 100);
    const min = inner.key("min_values").number(0, 10) ?? 1;
    inner.key("max_values").number(1, 10);
    checkModalRules(inner, min);
  } else {
    inner.key("custom_id").requiredText(1, 100);
    if (!inner.key("disabled").isAbsent) inner.key("disabled").wrong("COMPONENT_DISABLED", "Not in a modal");
    if (type === component.checkbox) return;
    const list = inner.key("options");
    list.required();
    const options = list.items(type === component.radioGroup ? 2 : 1, 10);
    for (const option of options) checkSelectOption(option);
    list.unique(options, (option) => option.object["value"], "The specified option value is already used");
    if (type === component.checkboxGroup) checkModalRules(inner, inner.key("min_values").number(0, 10) ?? 1);
  }
}

function checkTextInput(input: Field): void {
  input.key("custom_id").requiredText(1, 100);
  input.key("style").required();
  input.key("style").choice([1, 2]);
  const min = input.key("min_length").number(0, 4000) ?? 0;
  const max = input.key("max_length").number(1, 4000) ?? 4000;
  if (min > max) input.key("min_length").wrong("COMPONENT_MIN_LENGTH", "min_length is above max_length");
  input.key("required").boolean();
  input.key("value").text(0, max);
  input.key("placeholder").text(0, 100);
  if (!input.key("disabled").isAbsent) input.key("disabled").wrong("COMPONENT_DISABLED", "Not in a modal");
}

function checkSection(section: Field, isFileKnown: IsFileKnown): void {
  section.key("components").required();
  for (const text of section.key("components").items(1, 3)) {
    if (text.key("type").choice([component.text]) !== undefined) text.key("content").requiredText(1, 4000);
  }
  const accessory = section.key("accessory");
  if (!accessory.required()) return;
  const type = accessory.key("type").choice([component.button, component.thumbnail]);
  if (type === component.button) checkButton(accessory);
  if (type === component.thumbnail) checkMedia(accessory, isFileKnown);
}

function checkMedia(item: Field, isFileKnown: IsFileKnown): void {
  checkMediaUrl(item.key("media").key("url"), isFileKnown, false);
  item.key("description").text(0, 1024);
  item.key("spoiler").boolean();
}

/** `attachment://name` must name a file of the request, or one that the message keeps. */
export function checkMediaUrl(url: Field, isFileKnown: IsFileKnown, isOnlyAttachment: boolean): void {
  const text = url.requiredText(1, 2048);
  if (text === undefined) return;
  const name = /^attachment:\/\/(.*)$/.exec(text)?.[1];
  if (name !== undefined) {
    if (!isFileKnown(name))
      url.wrong("UNFURLED_MEDIA_ITEM_REFERENCED_ATTACHMENT_NOT_FOUND", `No file named "${name}"`);
  } else if (isOnlyAttachment) {
    url.wrong("URL_TYPE_INVALID_SCHEME", "Only attachment:// references are supported here");
  } else {
    checkUrl(url, 2048);
  }
}
