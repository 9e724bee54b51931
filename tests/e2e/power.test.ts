import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

function figure(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? "")?.[0]);
}

const ODD = ["'; DROP TABLE tank", "pump -5 W", "pump 1e999 W", "💡", "pump 100 W, 30 h", "a 1 W; a 2 W"];

describe("/power load", () => {
  it("gives the cost of a month by device, with the electrician's caution", async () => {
    const club = openClub();
    const reply = await club.ask("/power load devices:return pump 850 W price:0.17");
    // 0.85 kW × 24 h × 30.4375 days × 0.17 = 105.6 (104.04 for 30 days).
    expect(Math.abs(figure(reply.headline) - 105.6)).toBeLessThan(0.6);
    expect(textOf(reply)).toContain("850 W on average");
    expect(
      reply.cautions.some(({ level, text }) => level === "danger" && text.includes("licensed electrician")),
    ).toBe(true);
    expect(textOf(reply)).toContain("drip loop");
  });

  it("asks for the price, and refuses nonsense", async () => {
    const club = openClub();
    expect(textOf(await club.say("/power load devices:return pump 180 W"))).toContain(
      "What does a kilowatt-hour cost you",
    );
    for (const odd of ODD) {
      const outcome = await club.say(`/power load devices:${odd} price:0.17`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});

describe("/power circuits", () => {
  it("lays the load on the circuits and names what is doubtful", async () => {
    const club = openClub();
    const reply = await club.ask(
      "/power circuits devices:return pump 180 W, circuit A; heater 1800 W, circuit A; light 600 W, power factor 0.6, circuit B circuits:A 20 A, protected; B 15 A volts:120 V",
    );
    // 600 W ÷ (120 V × 0.6) = 8.33 A; 180 and 1800 W on 120 V are 16.5 A, above 16 A (NFPA 70, 210.20: 80 % of 20 A).
    const [a = [], b = []] = reply.table?.rows ?? [];
    expect(figure(a[1])).toBeCloseTo(16.5, 1);
    expect(figure(a[2])).toBe(16);
    expect(figure(b[1])).toBeCloseTo(8.33, 1);
    const text = textOf(reply);
    expect(text).toContain("move something to another circuit");
    expect(text).toContain("Circuit B has no ground-fault");
    expect(text).toContain("hangs on circuit A");
    expect(text).toContain("United States code");
  });

  it("refuses a device on a circuit that was not described, and nonsense", async () => {
    const club = openClub();
    const lost = await club.ask(
      "/power circuits devices:pump 180 W, circuit C circuits:A 20 A; B 15 A volts:120 V",
    );
    expect(lost.ok).toBe(false);
    expect(lost.body[0]).toContain("no circuit of that name");
    for (const odd of ["A", "A -20 A", "20", "🔌 20 A; 🔌 20 A", "volts"]) {
      const outcome = await club.say(`/power circuits devices:pump 180 W circuits:${odd} volts:120 V`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
