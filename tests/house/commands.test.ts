import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { commands } from "../../commands/index.ts";
import { parseLine } from "../../src/console/parse-line.ts";
import { allCommands } from "../../src/kit/command.ts";

const paths = allCommands(commands);

describe("every command", () => {
  it("has a name of its own", () => {
    expect(new Set(paths.map(({ path }) => path)).size).toBe(paths.length);
  });

  it.each(paths)("/$path stands in the README", ({ path }) => {
    expect(readFileSync("README.md", "utf8")).toContain(`/${path}`);
  });

  it.each(paths)("/$path has a conversation test", ({ path }) => {
    const [name = ""] = path.split(" ");
    const file = `tests/e2e/${name}.test.ts`;
    expect(existsSync(file)).toBe(true);
    expect(readFileSync(file, "utf8")).toContain(`/${path}`);
  });

  it.each(paths)("/$path has an example that the terminal takes apart", ({ path, command }) => {
    expect(command.examples.length).toBeGreaterThan(0);
    for (const example of command.examples) {
      const parsed = parseLine(example, commands);
      expect(parsed.path).toBe(path);
      for (const name of Object.keys(parsed.options)) expect(Object.keys(command.options)).toContain(name);
    }
  });

  it("is listed: no command file stands outside the list", () => {
    const listed = commands.map(({ name }) => name);
    const files = readdirSync("commands").filter((name) => name !== "index.ts");
    expect(files.map((name) => name.replace(".ts", "")).sort()).toEqual([...listed].sort());
  });
});
