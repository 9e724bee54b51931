import type { CommandEntry } from "../src/kit/command.ts";
import algae from "./algae/index.ts";
import ammonia from "./ammonia/index.ts";
import ask from "./ask/index.ts";
import batch from "./batch/index.ts";
import brood from "./brood/index.ts";
import carbon from "./carbon/index.ts";
import helpCase from "./case/index.ts";
import change from "./change/index.ts";
import clash from "./clash.ts";
import cloudy from "./cloudy.ts";
import convert from "./convert.ts";
import correct from "./correct.ts";
import cost from "./cost/index.ts";
import culture from "./culture/index.ts";
import cycle from "./cycle/index.ts";
import digest from "./digest/index.ts";
import dose from "./dose/index.ts";
import erase from "./erase.ts";
import exportRecord from "./export.ts";
import flood from "./flood/index.ts";
import flow from "./flow/index.ts";
import glossary from "./glossary.ts";
import group from "./group/index.ts";
import heat from "./heat/index.ts";
import help from "./help.ts";
import importRecord from "./import.ts";
import instrument from "./instrument/index.ts";
import juveniles from "./juveniles/index.ts";
import log from "./log/index.ts";
import minerals from "./minerals/index.ts";
import outage from "./outage/index.ts";
import oxygen from "./oxygen/index.ts";
import pedigree from "./pedigree/index.ts";
import plan from "./plan/index.ts";
import plant from "./plant/index.ts";
import power from "./power/index.ts";
import purify from "./purify/index.ts";
import readings from "./readings.ts";
import regimen from "./regimen/index.ts";
import rota from "./rota/index.ts";
import salt from "./salt/index.ts";
import settings from "./settings.ts";
import sheet from "./sheet/index.ts";
import skimmate from "./skimmate/index.ts";
import spawn from "./spawn/index.ts";
import stocking from "./stocking/index.ts";
import tank from "./tank/index.ts";
import target from "./target.ts";
import train from "./train/index.ts";
import trend from "./trend/index.ts";
import undo from "./undo.ts";
import uv from "./uv/index.ts";
import vessel from "./vessel/index.ts";
import weight from "./weight/index.ts";
import workout from "./workout.ts";

/** What a member can type, in the order of /help. */
export const commands: readonly CommandEntry[] = [
  ask,
  salt,
  dose,
  change,
  stocking,
  ammonia,
  oxygen,
  minerals,
  train,
  cycle,
  carbon,
  algae,
  clash,
  flow,
  plant,
  flood,
  cloudy,
  helpCase,
  glossary,
  convert,
  workout,
  outage,
  heat,
  power,
  weight,
  purify,
  uv,
  skimmate,
  vessel,
  sheet,
  tank,
  log,
  readings,
  trend,
  target,
  digest,
  plan,
  regimen,
  group,
  brood,
  spawn,
  batch,
  culture,
  rota,
  juveniles,
  pedigree,
  cost,
  correct,
  undo,
  importRecord,
  exportRecord,
  instrument,
  settings,
  erase,
  help,
];
