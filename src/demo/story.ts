/** One line that an invented member typed, and how many days before the end of the story. */
export interface Told {
  readonly member: string;
  readonly daysBefore: number;
  readonly line: string;
}

/** Length of the story, days. */
const DAYS = 365;

/** A repeatable row of numbers from 0 to 1. Source: the 32-bit mixing steps known as mulberry32. */
function repeatable(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A keeper's habits with one tank: how often they test and change water, and what their tank does. */
interface Keeper {
  readonly member: string;
  readonly tank: string;
  readonly setUp: readonly string[];
  readonly testEveryDays: number;
  readonly changeEveryDays: number;
  readonly changePercent: number;
  /** Nitrate as the ion, mg/L: at the start, made a day, in the new water. */
  readonly nitrate: { readonly start: number; readonly perDay: number; readonly source: number };
  /** The steps of the colour chart that nitrate is read on. */
  readonly chart: readonly number[];
  readonly temperature: number;
  readonly ph: number;
  readonly alkalinity?: { readonly target: number; readonly dropPerDay: number };
  readonly salinity?: number;
  /** Days before the end, and what was typed then. */
  readonly events: readonly (readonly [daysBefore: number, line: string])[];
}

const KEEPERS: readonly Keeper[] = [
  {
    member: "ines",
    tank: "Lagoon",
    setUp: [
      "/settings decimal:point gallon:US gravity:25/25 °C zone:Europe/Lisbon",
      "/tank add name:Lagoon kind:marine containers:display 240x100x70 cm inside, level 62 cm, rock 180 kg, sand 60 kg; settling box 150 L measured; 4 x drum 90 L measured; algae tank 100x60x50 cm inside, level 38 cm",
      "/tank name alias:DT",
      "/tank note livestock:1 brown-marbled grouper 55 cm; 2 queen triggerfish 25 cm food:280 g prawn 3 times a week media:300 L moving bed; 60 L ceramic rings flow:6000 L/h salinity:34 ppt temperature:26 °C",
      "/plant water crest:60 slots of 6 mm, teeth 40 mm level:25 mm overflow-box:10 L returns:nozzle: 20 mm below row:settling overflows 14 mm; drum 1 overflows 14 mm; drum 2 overflows 14 mm; drum 3 overflows 14 mm; drum 4 holds the pump, room 120 mm",
      "/plant water pump:0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m; 12000 L/h at 2.4 m lift:1.7 m pipe:2 in, 12 m, 4 elbows, exit",
      "/plant room room:18-26 °C humidity:45 % walls:acrylic 25 mm devices:return pump 180 W, circuit A; heater 300 W, 10 h, circuit B circuits:A 20 A, protected; B 15 A, protected volts:230 V price:0.24",
      "/plant people contacts:Ines 555 0100; vet Dr Alva 555 0142 valves:main shut-off: left of drum 4; breaker: hall, no. 6",
      "/instrument add name:nitrate chart for:nitrate steps:0 5 10 25 50 100",
      "/salt calibrate used:4.1 kg volume:110 L read:33.5 ppt product:blue bag",
      "/tank share tank:Lagoon",
    ],
    testEveryDays: 5,
    changeEveryDays: 10,
    changePercent: 30,
    nitrate: { start: 40, perDay: 2.4, source: 0 },
    chart: [0, 5, 10, 25, 50, 100],
    temperature: 26,
    ph: 8.1,
    alkalinity: { target: 8.2, dropPerDay: 0.16 },
    salinity: 34,
    events: [
      [190, "/log added 1 picasso triggerfish"],
      [120, "/log harvest 900 g"],
      [106, "/log harvest 1100 g"],
      [92, "/log harvest 1 kg"],
      [60, "/log skimmer off"],
      [58, "/log skimmer on"],
      [30, "/log note return pump cleaned"],
    ],
  },
  {
    member: "bruno",
    tank: "Fern pool",
    setUp: [
      "/settings decimal:point zone:Europe/Lisbon",
      "/tank add name:Fern pool kind:fresh containers:display 120x50x50 cm inside, level 45 cm, sand 40 kg",
      "/tank note livestock:12 yellow tang 5 cm food:3 g flake daily temperature:24 °C",
    ],
    testEveryDays: 9,
    changeEveryDays: 7,
    changePercent: 40,
    nitrate: { start: 15, perDay: 0.7, source: 3 },
    chart: [0, 5, 10, 20, 40, 80],
    temperature: 24,
    ph: 6.8,
    events: [
      [200, "/log note new lamp"],
      [75, "/log media changed"],
    ],
  },
  {
    member: "carla",
    tank: "Mangrove",
    setUp: [
      "/settings decimal:point gravity:20/20 °C zone:Europe/Paris",
      "/tank add name:Mangrove kind:brackish containers:display 150x60x60 cm inside, level 40 cm, sand 80 kg; filter box 60 L measured",
      "/tank note salinity:10 ppt temperature:27 °C",
    ],
    testEveryDays: 12,
    changeEveryDays: 21,
    changePercent: 25,
    nitrate: { start: 10, perDay: 0.35, source: 2 },
    chart: [0, 5, 10, 20, 40, 80],
    temperature: 27,
    ph: 7.8,
    salinity: 10,
    events: [[140, "/log added 3 scat"]],
  },
  {
    member: "dmitri",
    tank: "Thimble",
    setUp: [
      "/settings decimal:point gravity:25/25 °C zone:America/Chicago",
      "/tank add name:Thimble kind:marine containers:box 40x30x35 cm inside, level 30 cm, rock 5 kg, sand 4 kg",
      "/tank note salinity:35 ppt temperature:25 °C",
    ],
    testEveryDays: 4,
    changeEveryDays: 7,
    changePercent: 15,
    nitrate: { start: 2, perDay: 0.25, source: 0 },
    chart: [0, 2, 5, 10, 25, 50],
    temperature: 25,
    ph: 8.2,
    alkalinity: { target: 8.8, dropPerDay: 0.22 },
    salinity: 35,
    events: [[45, "/log dosed 20 ml bicarbonate"]],
  },
  {
    member: "esi",
    tank: "Ward",
    setUp: [
      "/settings decimal:point zone:Africa/Accra",
      "/tank add name:Ward kind:marine containers:tub 120 L measured",
      "/tank note salinity:34 ppt temperature:25 °C",
    ],
    testEveryDays: 3,
    changeEveryDays: 3,
    changePercent: 50,
    nitrate: { start: 5, perDay: 1.5, source: 0 },
    chart: [0, 5, 10, 25, 50, 100],
    temperature: 25,
    ph: 8,
    salinity: 34,
    events: [
      [80, "/log added 1 picasso triggerfish"],
      [50, "/log removed 1 picasso triggerfish"],
    ],
  },
];

/** The year of an invented club, in the order it was typed. The sixth member is new and keeps no tank yet. */
export function story(): readonly Told[] {
  const lines = KEEPERS.flatMap((keeper, index) => yearOf(keeper, repeatable(1000 + index)));
  const newcomer: Told = {
    member: "farouk",
    daysBefore: 2,
    line: "/settings decimal:point zone:Europe/London",
  };
  return [...lines, newcomer].sort((a, b) => b.daysBefore - a.daysBefore);
}

function yearOf(keeper: Keeper, random: () => number): readonly Told[] {
  const { member } = keeper;
  const told: Told[] = keeper.setUp.map((line, index) => ({ member, daysBefore: DAYS - index / 1000, line }));
  const log = (daysBefore: number, line: string): void => {
    told.push({ member, daysBefore, line });
  };
  for (const [daysBefore, line] of keeper.events) log(daysBefore, line);
  let nitrate = keeper.nitrate.start;
  let alkalinity = keeper.alkalinity?.target ?? 0;
  let nextTest = DAYS - 1;
  let nextChange = DAYS - keeper.changeEveryDays;
  for (let day = DAYS - 1; day > 0.5; day -= 0.5) {
    nitrate += (keeper.nitrate.perDay / 2) * (0.5 + random());
    alkalinity -= ((keeper.alkalinity?.dropPerDay ?? 0) / 2) * (0.5 + random());
    if (day <= nextTest) {
      log(day, `/log ${testLine(keeper, nitrate, alkalinity, random)}`);
      nextTest = day - irregular(keeper.testEveryDays, random);
    }
    if (day <= nextChange) {
      const percent = Math.round(keeper.changePercent * (0.85 + 0.3 * random()));
      log(day - 0.2, `/log wc ${percent} %`);
      nitrate += (keeper.nitrate.source - nitrate) * (percent / 100);
      alkalinity += ((keeper.alkalinity?.target ?? alkalinity) - alkalinity) * 0.8;
      nextChange = day - irregular(keeper.changeEveryDays, random);
    }
  }
  return told;
}

/** Members are late more often than early, and now and then they are away. */
function irregular(days: number, random: () => number): number {
  return days * (0.7 + 0.7 * random()) + (random() < 0.06 ? 14 : 0);
}

function testLine(keeper: Keeper, nitrate: number, alkalinity: number, random: () => number): string {
  const around = (value: number, spread: number): number => value + spread * (random() + random() - 1);
  const seen = nitrate * around(1, 0.12);
  const step = keeper.chart.reduce((best, each) =>
    Math.abs(each - seen) < Math.abs(best - seen) ? each : best,
  );
  return [
    `no3 ${step}`,
    ...(random() < 0.7 ? [`temp ${around(keeper.temperature, 0.8).toFixed(1)} °C`] : []),
    ...(random() < 0.5 ? [`ph ${around(keeper.ph, 0.2).toFixed(1)}`] : []),
    ...(keeper.alkalinity === undefined || random() < 0.4
      ? []
      : [`alk ${around(alkalinity, 0.2).toFixed(1)} dKH`]),
    ...(keeper.salinity === undefined || random() < 0.4
      ? []
      : [`salinity ${around(keeper.salinity, 0.6).toFixed(1)} ppt`]),
  ].join(", ");
}
