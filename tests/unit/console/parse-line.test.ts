import { describe, expect, it } from "vitest";
import { commands } from "../../../commands/index.ts";
import { parseLine } from "../../../src/console/parse-line.ts";
import { UserError } from "../../../src/kit/user-error.ts";

describe("a typed line", () => {
  it.each<[string, string, Record<string, string>]>([
    ["/salt mix volume:200 L salinity:35 ppt", "salt mix", { volume: "200 L", salinity: "35 ppt" }],
    ["  /SALT   Mix  volume:200 L ", "salt mix", { volume: "200 L" }],
    ["/salt mix 200 L salinity: 35 ppt", "salt mix", { volume: "200 L", salinity: "35 ppt" }],
    ["/log no3 20, temp 25", "log", { line: "no3 20, temp 25" }],
    ["/log nitrate: 20 when:yesterday", "log", { line: "nitrate: 20", when: "yesterday" }],
    ["/log note at 12:30 the skimmer ran over", "log", { line: "note at 12:30 the skimmer ran over" }],
    ["/dose dilute target:1:5 volume:500 mL", "dose dilute", { target: "1:5", volume: "500 mL" }],
    ["/log nitrate:20 ph:8.1", "log", { line: "nitrate:20 ph:8.1" }],
    ["/flow drain drain:siphon: 2 in, drop 75 cm", "flow drain", { drain: "siphon: 2 in, drop 75 cm" }],
    ["/flow pipe riser: 2 in, 12 m", "flow pipe", { pipe: "riser: 2 in, 12 m" }],
    ["/help", "help", {}],
    ["/help salt mix", "help", { command: "salt mix" }],
    ["/tank list", "tank list", {}],
    ["/xyzzy volume:3", "xyzzy", {}],
    ["/", "", {}],
    ["/salt", "salt", {}],
  ])("%s", (line, path, options) => {
    expect(parseLine(line, commands)).toMatchObject({ path, options });
  });

  it.each([
    ["/salt mix volume:1 L volume:2 L", "“volume” stands there twice"],
    ["/salt mix volum:1 L", "Did you mean volume:?"],
    ["/salt mxi volume:1 L", "Did you mean /salt mix?"],
    ["/tank list now", "“now” was not used"],
    ["/salt adjust now:33 ppt to:35 ppt", "There is no “now:” here. /salt adjust takes to:, from:"],
    ["/dose together a:bleach b:vinegar", "/dose together takes first: and second:"],
    ["/dose raise substance:salt mineral:calcium", "There is no “mineral:” here"],
    ["/salt adjust 33 ppt to:35 ppt", "both stand for to:"],
  ])("%s is refused", (line, message) => {
    expect(() => parseLine(line, commands)).toThrow(message);
    expect(() => parseLine(line, commands)).toThrow(UserError);
  });

  it("is nobody's prototype", () => {
    expect(parseLine("/salt mix volume:__proto__ salinity:constructor", commands).options).toEqual({
      volume: "__proto__",
      salinity: "constructor",
    });
  });
});
