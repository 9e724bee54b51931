import { describe, expect, it } from "vitest";
import { complete } from "../../../src/console/complete.ts";
import { type Club, memberId, openClub } from "../../support/club.ts";

const offered = (line: string, club: Club = openClub()) => complete(line, club.app, memberId("ines"))[0];

describe("what Tab offers", () => {
  it("are commands, subcommands and the options not yet typed", () => {
    expect(offered("/ta")).toContain("/tank ");
    expect(offered("/sal")).toEqual(["/salt "]);
    expect(offered("/tank sh")).toEqual(expect.arrayContaining(["/tank show ", "/tank share "]));
    expect(offered("/undo ")).toEqual(["tank:"]);
    expect(offered("/salt mix volume:100 L sal")).toEqual(["salinity:"]);
    expect(offered("/salt mix salinity:35 ppt s")).not.toContain("salinity:");
  });

  it("are the choices of a closed list, units after a number, and the member's own tanks", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:box 200 L measured");
    expect(offered("/tank add kind:", club)).toEqual(["marine ", "brackish ", "fresh "]);
    expect(offered("/salt mix volume:75 g", club)).toContain("75 US gal ");
    expect(offered("/tank show tank:la", club)).toEqual(["Lagoon "]);
    expect(complete("/tank show tank:la", club.app, memberId("bruno"))[0]).toEqual([]);
  });

  it("are nothing for what is no command", () => {
    for (const line of ["", "hello", "/xyzzy volume:", "/tank xyzzy name:", "/tank list "])
      expect(offered(line), line).toEqual([]);
  });
});
