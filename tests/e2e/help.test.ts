import { describe, expect, it } from "vitest";
import { allPaths, openClub, textOf } from "../support/club.ts";

describe("/help", () => {
  it("lists every command there is", async () => {
    const reply = await openClub().ask("/help");
    const listed = reply.table?.rows.map(([name]) => name);
    expect(listed).toEqual(allPaths.map(({ path }) => `/${path}`));
    expect(textOf(reply)).toContain("For sick animals ask a vet");
  });

  it("explains one command, or a whole family, with or without the slash", async () => {
    const club = openClub();
    const one = textOf(await club.ask("/help command:/salt mix"));
    expect(one).toContain("volume: How much, e.g. 110 L or 30 US gal");
    expect(one).toContain("110 L or 30 US gal.\n");
    expect(one).toContain("Example: /salt mix volume:110 L salinity:35 ppt");
    const family = textOf(await club.ask("/help command:SALT"));
    for (const sub of ["mix", "calibrate", "adjust", "topoff", "convert"])
      expect(family).toContain(`/salt ${sub}:`);
  });

  it("shows the list when the command is not there", async () => {
    const reply = await openClub().ask("/help command:salt mango");
    expect(reply.ok).toBe(false);
    expect(reply.title).toBe("There is no command salt mango");
  });
});

describe("a command that is not there", () => {
  it("is answered with the nearest one, or with what its family has", async () => {
    const club = openClub();
    expect(textOf(await club.say("/sal"))).toContain("Did you mean /salt?");
    expect(textOf(await club.say("/salt"))).toContain("/salt mix");
    const far = await club.ask("/xyzzy");
    expect(far.ok).toBe(false);
    expect(textOf(far)).toContain("/help lists them all");
  });
});
