import type { PlantCautions, PlantRefusals } from "../core/plant/cautions.ts";
import type { OutageAction } from "../core/plant/outage-actions.ts";
import type { ContainerAdvice } from "../core/plant/second-hand-container.ts";
import type { WallThicknessReason } from "../core/plant/wall-thickness.ts";
import { sentenceCase } from "./dosing.ts";
import type { Wording } from "./wording.ts";

/** Three figures that count: a sentence needs no more. */
function say(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** Hours as a keeper says them: minutes under two, days from three days on. */
function hoursText(hours: number): string {
  if (hours < 2) return `${say(hours * 60)} minutes`;
  return hours >= 72 ? `${say(hours / 24)} days` : `${say(hours)} h`;
}

/** A circuit by its name: “A” alone would read as an article. */
function circuitText(name: string): string {
  return /circuit/i.test(name) ? name : `circuit ${name}`;
}

/** Whole litres and millimetres above ten, where a fraction would only look exact. */
function whole(value: number): string {
  return Math.abs(value) >= 10 ? String(Math.round(value)) : say(value);
}

/** The sentence for each caution of the plant room. */
export const plantCautionWording: Wording<PlantCautions> = {
  "weir-below-tested-heads": ({ headMm, testedMm }) =>
    `A head of ${say(headMm)} mm is below the ${testedMm} mm of the published tests. At such heads a little more water passes than the formula says, so the true level is a little lower.`,
  "water-over-the-teeth": ({ headMm, toothHeightMm }) =>
    `The water may stand ${whole(headMm)} mm above the foot of the teeth, which are ${whole(toothHeightMm)} mm high: it would run over them and carry animals along. Add slots, or send less water.`,
  "drain-too-small": ({ drain, capacityLPerH, flowLPerH }) =>
    `The narrowest place, ${drain}, carries about ${whole(capacityLPerH)} L/h and the flow may be ${whole(flowLPerH)} L/h: the water above it rises. Use a larger pipe or less flow.`,
  "siphon-loses-prime": ({ runningLPerH, unprimedLPerH, flowLPerH }) =>
    `Full, the siphon carries ${whole(runningLPerH)} L/h; once air gets in, about ${whole(unprimedLPerH)} L/h of the ${whole(flowLPerH)} L/h that arrive. The rest has to find the standby drain.`,
  "standby-too-small": ({ drain, capacityLPerH, flowLPerH }) =>
    `${drain} carries about ${whole(capacityLPerH)} L/h, and alone it must take the whole flow of ${whole(flowLPerH)} L/h when the siphon blocks. Two drains of half the flow each are no reserve.`,
  "keep-emergency-pipe-open": () =>
    "Put no valve on the standby or the emergency pipe, and keep the emergency pipe dry in running: water heard in it is the alarm.",
  "strainer-takes-area": () =>
    "A strainer or a snail on the entry takes away part of the opening: clean it with every water change.",
  "pipe-too-fast": ({ pipe, velocityMPerS, limitMPerS }) =>
    `Water in ${pipe} runs at ${say(velocityMPerS)} m/s; above ${limitMPerS} m/s expect noise, high losses and hard knocks. A wider pipe helps.`,
  "pipe-too-slow": ({ pipe, velocityMPerS, limitMPerS }) =>
    `Water in ${pipe} runs at ${say(velocityMPerS)} m/s; below ${limitMPerS} m/s solids settle. Flush it from time to time.`,
  "device-loss-not-given": ({ devices }) =>
    `The loss of ${devices} was not given and is counted as none, which it is not: find its head loss at this flow in its papers, and expect less flow until then.`,
  "friction-outside-turbulent": ({ reynolds }) =>
    `The flow is so slow (Reynolds number ${whole(reynolds)}) that it is hardly turbulent: Hazen–Williams does not hold there, and the loss is small in any case.`,
  "pump-curve-from-two-figures": () =>
    "Only the greatest head and the greatest flow are known, so the curve between is guessed. Three points from its printed curve give a firmer answer.",
  "pump-near-end-of-curve": ({ flowLPerH, lastLPerH }) =>
    `The flow of ${whole(flowLPerH)} L/h is close to the last point known (${whole(lastLPerH)} L/h): the upper end of the range is cut there.`,
  "do-pump-off-test": () =>
    "Prove it: with towels and a hand on the switch, stop the pump, watch to the end and mark the level. Repeat after every change of pipe, pump or level.",
  "check-valve-not-counted": () =>
    "A check valve is not counted on: growth or a snail holds it open sooner or later.",
  "return-empties-display": ({ opening, depthMm, extraL }) =>
    `${opening} lies ${whole(depthMm)} mm below the running level and nothing lets air in: with the pump off it draws the display down to there, ${whole(extraL)} L more than the overflow alone. Raise it, or drill a siphon break just under the surface.`,
  "siphon-break-needs-cleaning": ({ opening, extraL }) =>
    `If the siphon break of ${opening} clogs, ${whole(extraL)} L more come back. Clean and look at it every month (common practice).`,
  "pump-off-floods": ({ container, overMm }) =>
    `With the pump off, ${container} runs over by ${whole(overMm)} mm of level. Lower the running level in the row, or bring back less water, before the pump is left alone.`,
  "pump-off-may-flood": ({ container, overMm }) =>
    `With the pump off, ${container} stays below its rim by the best figures, and runs over by up to ${whole(overMm)} mm at the far end of their range. Measure levels and areas more closely, or make room.`,
  "pump-off-tight": ({ container, leftMm, margin }) =>
    `With the pump off, ${container} has ${whole(leftMm)} mm left under its lowest opening: less than the factor of ${margin} that is usual as a reserve. Make more room.`,
  "thin-walls-bulge": () =>
    "Thin-walled moulded containers bulge as they fill: the rim comes down and the free volume shifts. Only the real test tells.",
  "cascade-holds-nothing-more": ({ containers }) =>
    `What overflows onward (${containers}) passes everything on when the pump is off: its empty height is no reserve.`,
  "blocked-drain-floods": ({ riseMm, freeboardMm }) =>
    `If the drains block with the pump running, the display rises ${whole(riseMm)} mm and has ${whole(freeboardMm)} mm to its rim: it runs over. Let the pump reach less water: raise its inlet, lower the running level, or use a smaller chamber.`,
  "blocked-drain-tight": ({ riseMm, freeboardMm }) =>
    `If the drains block with the pump running, the display rises ${whole(riseMm)} mm of the ${whole(freeboardMm)} mm to its rim: within the range of the figures it may run over.`,
  "restart-runs-dry": ({ missingL }) =>
    `When the pump starts again it may draw air: ${whole(missingL)} L are missing before water comes back down. Open its valve slowly, or give its chamber more water.`,
  "top-off-floods": ({ container, reservoirL, freeL }) =>
    `A top-off that sticks on sends ${whole(reservoirL)} L, and ${container} has room for ${whole(freeL)} L after a pump stop: use a smaller reservoir, or more room.`,
  "top-off-shifts-salinity": ({ before, after }) =>
    `If it all goes in at once, salinity goes from ${say(before)} to ${say(after)}: more than 1 at a stroke is a risk to the animals (common practice).`,
  "mains-fill-never-stops": () =>
    "A filling line fed from the mains has no end: it floods the room and freshens the tank until someone comes. Feed from a reservoir that is small enough instead.",
  "two-shut-offs": () =>
    "Use two shut-offs that fail apart from each other, such as a float valve and a level switch of another kind.",
  "spill-on-the-floor": ({ container, litres }) =>
    `The worst single failure is at ${container}: about ${whole(litres)} L on the floor. Think where it would run, and keep sockets and power strips out of that path.`,
  "display-alone-in-outage": () =>
    "With the pump off the filters stand apart: only the water in the display counts for the fish.",
  "still-surface-buys-minutes": () =>
    "A still surface takes in little air: the hours given are all there is until something bubbles or stirs.",
  "generator-outdoors-only": () =>
    "Run a generator outdoors only, far from windows, never in a room or a garage: its exhaust kills without a smell.",
  "stagnant-filter-water": () =>
    "Filters that stood still for hours hold spent water: drain or flush them before they are joined up again (common practice).",
  "oxygen-already-low": ({ nowMgPerL, alarmMgPerL }) =>
    `Oxygen is ${say(nowMgPerL)} mg/L already, at or below the ${alarmMgPerL} mg/L of alarm: bring air in now.`,
  "battery-fades": () =>
    "Batteries give less with age and under heavy load, 20–30 % in time (common practice): test yours with the real load once a year.",
  "two-heaters": () =>
    "Two smaller heaters on separate circuits are safer than a large one: one stuck on cannot cook the tank, one dead does not chill it.",
  "room-takes-the-heat": ({ roomW }) =>
    `The chiller gives its heat and its own power to the room, up to ${whole(roomW)} W: in a closed room it heats the air it works against. Lead that heat outside.`,
  "chiller-by-heat-removed": () =>
    "Choose a chiller by the heat it removes, in watts, at your water and room temperatures. Horsepower is the motor's, and says little about cooling.",
  "moisture-into-the-room": ({ kgPerDay, dewPointC }) =>
    `About ${say(kgPerDay)} kg of water a day goes into the room's air. It settles on anything colder than ${say(dewPointC)} °C: ventilate, or mould follows.`,
  "ask-an-electrician": () =>
    "This is arithmetic, not an electrical design. Salt water and mains power kill: circuits, breakers, bonding and fixed wiring are for a licensed electrician under the local code. Never fit a larger breaker to stop it tripping. Switch off at the source before hands go in.",
  "american-rule": () =>
    "The 125 % rule for continuous load is from the United States code. Elsewhere other rules hold: ask your electrician.",
  "circuit-overloaded": ({ circuit, amperes, limitA }) =>
    `${sentenceCase(circuitText(circuit))} may carry ${say(amperes)} A for hours, and ${say(limitA)} A is the most for continuous load: move something to another circuit.`,
  "start-up-surge": ({ circuit, surgeA, ratingA }) =>
    `When the largest motor on ${circuitText(circuit)} starts, the current may touch ${whole(surgeA)} A for a moment, above its ${whole(ratingA)} A: if it trips after a power cut, nothing runs. Stagger the starts.`,
  "life-support-on-one-circuit": ({ circuit }) =>
    `All that keeps the animals alive hangs on ${circuitText(circuit)}: one trip stops it all. Spread pumps and heating over two protected circuits at least.`,
  "no-ground-fault-protection": ({ circuit }) =>
    `${sentenceCase(circuitText(circuit))} has no ground-fault (residual-current) protection: do not run anything near water from it until an electrician has fitted it.`,
  "drip-loops": () =>
    "Give every cord a drip loop, keep sockets and power strips above and beside any path of spilled water, and test ground-fault (residual-current) protection every month.",
  "ask-a-structural-engineer": () =>
    "This is mass and pressure only, and never says that a floor will bear it. Ask a structural engineer before you buy, for any upper or timber floor, and for what lies under a slab.",
  "floor-figure-is-a-flag": ({ psf, times }) =>
    `${whole(psf)} psf is ${say(times)} times the usual design figure for a living room. Nearly every tank is above it over its own footprint: it is a reason to ask, not a verdict.`,
  "uneven-feet": ({ worstMPa }) =>
    `Feet never share evenly: on an uneven floor two may carry most, about ${say(worstMPa)} MPa each. Spread the load with plates, after asking the engineer.`,
  "ask-a-tank-maker": () =>
    "Have tanks made or judged by a fabricator or engineer who answers for it and states a safety factor. Fill it for the first time where a burst does no harm.",
  "second-hand-container": () =>
    "A used container is not judged from here. Cracked, crazed, hazed or sun-aged ones are not to be used; leave the rest to the eyes of someone who answers for it.",
  "leak-test-outside": () =>
    "Test-fill outside the living space, in steps, on a level and full support, and stay out of the path of the water.",
  "never-unattended-filling": () =>
    "Never leave purified water running into an open container alone: fit a float or shut-off that works without power, and a container that may overflow safely.",
  "ask-rating-conditions": () =>
    "Ask at which pressure and temperature the daily rate was stated: 345 kPa (50 psi) and 414 kPa (60 psi), both at 25 °C, are in use.",
  "uv-burns": () =>
    "Ultraviolet light burns eyes and skin: unplug before opening, never look at the lamp. Have it switch off when the flow stops, for a standing chamber overheats.",
  "uv-is-no-cure": () =>
    "It treats only the water that passes: what lives on fish and ground goes on. It lowers the pressure of disease and cures nothing.",
  "uv-short-circuits": () =>
    "Real chambers let some water pass by, lamps age and sleeves foul: take at least twice the dose.",
  "drinking-water-dose-not-enough": () =>
    "Doses from drinking-water tables are far too small for parasites of fish, which need some 184–288 mJ/cm².",
  "slow-corners-mix-later": ({ boundHours }) =>
    `Water behind rock and in slow filters mixes later: count on ${hoursText(boundHours)} to be safe.`,
  "skimmate-overflows": ({ hours }) =>
    `At this rate the collecting cup is full in ${hoursText(hours)}, and then runs over: empty it before, or fit a shut-off.`,
  "pump-runs-dry": ({ hours }) =>
    `Without top-off the pump draws air after ${hoursText(hours)}. Refill by hand with purified water before then, or switch it off.`,
};

/** The sentence for each refusal of the plant room. */
export const plantRefusalWording: Wording<PlantRefusals> = {
  "unusable-figure": ({ figure, value, rule }) =>
    `The ${figure}${Math.abs(value) < 1e15 ? `, ${say(value)},` : ""} cannot be used: it ${rule}.`,
  "pump-cannot-lift": ({ shutOffHeadM, staticHeadM }) =>
    `No flow: the pump lifts at most ${say(shutOffHeadM)} m, and the water must rise ${say(staticHeadM)} m.`,
  "pump-curve-unreadable": ({ problem }) => `This pump curve cannot be used: ${problem}.`,
  "beyond-pump-curve": ({ lastLPerH, headLeftM }) =>
    `The pump would run beyond the last point of its curve: at ${whole(lastLPerH)} L/h it still has ${say(headLeftM)} m to spare. Add points further out.`,
  "weir-drowned": ({ flowLPerH, mostLPerH }) =>
    `This crest is too short to act as an overflow for ${whole(flowLPerH)} L/h: half closed it carries at most ${whole(mostLPerH)} L/h before the formula ends.`,
  "named-twice": ({ name }) => `Two of them are called ${name}: give each a name of its own.`,
  "circuit-not-named": ({ device, circuit }) =>
    `${sentenceCase(device)} is put on ${circuitText(circuit)}, and no circuit of that name was described.`,
  "nothing-named": ({ what }) => `There is nothing to work out yet: name ${what}.`,
  "wall-thickness-is-for-makers": ({ reasons }) =>
    `Wall thickness is not worked out here: ${reasons.map((reason) => wallThicknessReasonWording[reason]()).join("; ")}. Ask a tank maker or an engineer who answers for it.`,
  "power-does-not-suffice": ({ powerW, againstW }) =>
    `${whole(powerW)} W may not get there: up to ${whole(againstW)} W work against it all the while.`,
  "feed-pressure-too-low": ({ feedKPa, osmoticKPa }) =>
    `A feed pressure of ${whole(feedKPa)} kPa does not overcome the ${whole(osmoticKPa)} kPa that the salts in the water hold back: no water is made.`,
};

/** Why wall thickness is refused, in members' words. */
export const wallThicknessReasonWording: Readonly<Record<WallThicknessReason, () => string>> = {
  "stress-depends-on-support": () =>
    "the stress depends on how edges and rims are held, not on the depth alone",
  "glass-is-flawed": () => "glass fails from flaws no one sees, and tires under a steady load",
  "acrylic-creeps": () =>
    "acrylic creeps and crazes, and its strength hangs on grade, age, heat and the bond",
  "joints-govern": () => "the workmanship of the joints decides, and a sum cannot see it",
  "containers-not-made-for-it": () => "containers not made as tanks were never meant to hold water for years",
  "failure-is-sudden": () => "a failure lets tonnes of water go at once",
};

/** What to do in a power cut, in members' words. */
export const outageActionWording: Readonly<Record<OutageAction, () => string>> = {
  "switch-off-at-the-wall": () =>
    "Switch off heaters and lights at the wall, so that nothing surges or runs dry when power comes back.",
  "start-battery-air": () => "Start a battery air pump in the display, stone near the bottom, now.",
  "stir-the-surface": () =>
    "Keep the surface moving: a battery pump, or scoop and pour by hand every few minutes.",
  "open-the-lid": () => "Take covers off the display, so that air gets to the water.",
  "stop-feeding": () => "Do not feed: digestion doubles what fish breathe.",
  "take-out-spare-demand": () => "Take out leftover food and anything dead.",
  "wrap-the-tank": () => "Wrap the walls in blankets, leaving the surface open to air.",
  "shade-and-fan": () => "Keep the room dark and open at night; a battery fan over the surface cools.",
  "add-aerated-water": () =>
    "Change in prepared salt water of the same temperature that was aerated beforehand.",
  "check-oxygen-or-breathing": () =>
    "Measure oxygen each hour, or watch the fish: fast gills or gasping at the surface mean act now.",
  "generator-outside": () => "Start a generator only outdoors, away from windows.",
  "flush-filters-first": () =>
    "Before the filters are joined up again, drain or flush the water that stood in them.",
  "restart-in-steps": () =>
    "When power returns, start the return pump first, watch the levels, then heat and light.",
};

/** What to look at, and what to do, with a second-hand container. */
export const containerAdviceWording: Readonly<Record<ContainerAdvice, () => string>> = {
  "ask-its-history": () => "Ask what it held, how old it is, where it stood and why it is sold.",
  "refuse-what-held-poison": () =>
    "Leave any container that held chemicals, fuel, pesticide or treated wood alone.",
  "refuse-cracked-or-crazed": () =>
    "Leave glass with chips or scratches at the edges, and acrylic that is cracked, crazed, hazed or yellowed.",
  "refuse-sun-aged-plastic": () => "Leave plastic that is chalky, brittle or has stood in the sun for years.",
  "look-at-every-joint": () => "Look along every seam for bubbles, gaps, lifted silicone or old repairs.",
  "have-a-maker-look": () =>
    "Have a tank fabricator look at it, and reseal or turn it down; ask what they answer for.",
  "support-the-whole-floor": () => "Stand it on a flat, level, full support of the kind it was built for.",
  "test-fill-outside": () => "Test-fill it outdoors or over a drain, never in a living space.",
  "fill-in-steps": () => "Fill a quarter at a time, wait an hour, and look at seams and bowing each time.",
  "leave-it-full": () =>
    "Leave it full for a week at least before any animal, and dry the outside to see a weep.",
  "keep-a-way-out": () => "Keep a drain or pump ready to empty it, and stand aside while it fills.",
};
