import { expect, it } from "vitest";
import { plain } from "../../../src/discord/render.ts";

// The marks are those of the chat platform's markup: from memory.
it.each([
  ["**bold** _soft_ ~~gone~~ ||hidden||", "\\*\\*bold\\*\\* \\_soft\\_ \\~\\~gone\\~\\~ \\|\\|hidden\\|\\|"],
  ["<@123> <t:0> <#9>", "\\<@123\\> \\<t:0\\> \\<#9\\>"],
  ["[here](https://example.org)", "\\[here\\](https://example.org)"],
  ["# loud", "\\# loud"],
  ["-# small", "\\-# small"],
  ["- item\n1. first", "\\- item\n1\\. first"],
  ["-5 °C, #3, 1.5 L", "-5 °C, #3, 1.5 L"],
])("%s is shown as it stands", (text, shown) => {
  expect(plain(text)).toBe(shown);
});
