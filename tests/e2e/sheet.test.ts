import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

async function lagoon(name = "Lagoon") {
  const club = openClub();
  await club.ask(
    `/tank add name:${name} kind:marine containers:display 260x100x78 cm inside, level 70 cm; drum 110 L label; pump box 100x60x60 cm inside, level 45 cm; mixing drum 200 L measured`,
  );
  await club.ask(
    "/tank note livestock:1 grouper 5 kg; 6 triggerfish 1 kg salinity:35 ppt temperature:25.5 °C flow:6000 L/h",
  );
  await club.ask(
    "/plant water level:25 mm returns:none inlet:90 L row:drum overflows 14 mm, surface 0.17 m2, room 80 mm; pump box holds the pump, room 150 mm",
  );
  await club.ask("/plant room devices:return pump 180 W; light 240 W, 12 h masses:stand 160 kg");
  return club;
}

describe("/sheet system", () => {
  it("prints the whole system from one command, as words and as a picture", async () => {
    const club = await lagoon();
    const reply = await club.ask("/sheet system");
    const text = textOf(reply);
    // In the water's order, what stands apart last.
    expect(reply.table?.rows.map(([name]) => name)).toEqual(["display", "drum", "pump", "mixing drum"]);
    // 260 × 100 × 70 cm = 1820 L: at 6000 L/h 18.2 minutes, shown to two figures.
    expect(reply.table?.rows[0]?.slice(2, 4)).toEqual(["1820", "18"]);
    // 2.60 m² × 25 mm + 0.17 m² × 14 mm = 67.4 L on 0.60 m² is 112 mm of 150: 37.7 left.
    expect(text).toMatch(/pump off: 3[78](\.\d)? mm left in pump box/);
    // 180 W and half of 240 W.
    expect(text).toContain("power, mean: 300 W");
    // 2.60 × 1.00 × 0.78 m³ × 1.0233 + 160 kg = 2235 kg.
    expect(text).toMatch(/display to the brim: 22(3[0-9]|4[0-9]) kg/);
    expect(text).toContain("power cut, oxygen alarm:");
    expect(text).toContain("structural engineer");
    expect(text).toContain("licensed electrician");
    const picture = reply.picture;
    if (picture?.kind !== "system") throw new Error("no picture of the system");
    expect(picture.containers.map(({ label }) => label)).toEqual(["display", "drum", "pump", "mixing drum"]);
    expect(picture.altText).toContain("display 1820 L");
  });

  it("names what is not known yet instead of asking", async () => {
    const club = openClub();
    await club.ask("/tank add name:Puddle kind:fresh containers:display 60x30x36 cm inside, level 30 cm");
    const reply = await club.ask("/sheet system");
    expect(reply.ok).toBe(true);
    expect(textOf(reply)).toContain("turnover: not known yet");
    expect(textOf(reply)).toContain("Not known yet: flow (/tank note)");
  });

  it("needs a tank, and draws a name its letters cannot write by its role", async () => {
    const club = openClub();
    expect((await club.ask("/sheet system")).ok).toBe(false);
    await club.ask(
      '/tank add name:Odd kind:marine containers:水槽 display 100 L measured; <svg onload="x"> 10 L measured',
    );
    const reply = await club.ask("/sheet system");
    if (reply.picture?.kind !== "system") throw new Error("no picture of the system");
    expect(reply.picture.containers[0]?.label).toBe("display");
  });
});

describe("/sheet emergency", () => {
  it("makes one page to print, with contacts, valves, volumes and first actions", async () => {
    const club = await lagoon();
    await club.ask(
      "/plant people contacts:Ines 555 0100; vet Dr Alva 555 0142 valves:main shut-off left of the pump box; breaker in the hall",
    );
    const reply = await club.ask("/sheet emergency");
    const [html, text] = reply.files ?? [];
    expect(html?.mediaType).toBe("text/html");
    expect(html?.content).toMatch(/^<!doctype html>/);
    // Self-contained: nothing is fetched, nothing runs.
    expect(html?.content).not.toMatch(/<script|<link|<img|https?:|url\(/i);
    for (const page of [html?.content ?? "", text?.content ?? ""]) {
      expect(page).toContain("Ines 555 0100");
      expect(page).toContain("breaker in the hall");
      expect(page).toContain("display: 1820 L");
      expect(page).toContain("licensed electrician");
    }
    for (const heading of ["POWER CUT", "WATER ON THE FLOOR", "FISH GASPING", "A BREAKER HAS TRIPPED"])
      expect(text?.content).toContain(heading);
    const steps = (text?.content ?? "")
      .split(/\n\n/)
      .map((part) => part.split("\n").filter((line) => /^\d+\. /.test(line)).length);
    expect(steps.filter((count) => count > 0)).toHaveLength(4);
    expect(Math.max(...steps)).toBeLessThanOrEqual(10);
    expect(Math.min(...steps.filter((count) => count > 0))).toBeGreaterThanOrEqual(9);
  });

  it("keeps a member's contacts from everybody else, even of a shared tank", async () => {
    const club = await lagoon();
    await club.ask("/plant people contacts:Ines 555 0100");
    await club.ask("/tank share tank:Lagoon");
    const other = await club.ask("/sheet emergency tank:Lagoon", "bruno");
    expect(other.ok).toBe(false);
    expect(JSON.stringify(other)).not.toContain("555 0100");
  });

  it("lets nothing typed become markup", async () => {
    const club = await lagoon("<b>Lagoon</b>");
    await club.ask(
      `/plant people contacts:<script>alert(1)</script> & "Ines" valves:</li><img src=x onerror=alert(1)>`,
    );
    const reply = await club.ask("/sheet emergency");
    const html = reply.files?.[0]?.content ?? "";
    expect(html).not.toMatch(/<script|<img|<b>/);
    expect(html).toContain("&#60;script&#62;");
  });
});
