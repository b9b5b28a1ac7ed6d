// Where the dial stands, what to expect at it, and where its probe sits. Leaves out what an animal wants.
import type { Enclosure, Heater, Thermostat } from '../../../physics/enclosure.ts';
import { mainHeater } from '../../../physics/grid.ts';
import { baskingAimC } from '../../../planning/member.ts';
import type { DialAdvice } from '../../../planning/plan-answer.ts';
import type { PackFigures } from '../pack-job.ts';
import type { PackSubject } from '../pack-subject.ts';
import { capital, type Tongue } from '../tongue.ts';
import { expectations } from './expectations.ts';

export const heaterName = (heater: Heater, { w }: Tongue): string => w.heaters[heater.kind];

export function dialNotice(figures: PackFigures, subject: PackSubject, tongue: Tongue): readonly string[] {
  const { w, m, temp, spread } = tongue;
  const { enclosure, climate } = figures;
  const unit = `\u00a0°${m.settings.temperature}`;
  const lines = enclosure.thermostats.map((t) => `${settingOf(t, enclosure, tongue)} ${probeOf(t, tongue)}`);
  for (const heater of enclosure.heaters)
    if (heater.thermostatId === null) lines.push(w.home.noThermostat(heaterName(heater, tongue)));
  const { startH, endH } = enclosure.day;
  const main = mainDial(figures);
  const proven = provenDial(subject);
  const expected = expectations(subject, figures);
  const basking = expected.fitted ? expected.winterDay['basking-surface'] : main?.expectBaskingC;
  const advised = main?.advisedDayC ?? null;
  const aim = temp(baskingAimC(climate));
  lines.push(
    [
      w.home.dayIs(m.clock(startH), m.clock(endH)),
      basking ? w.home.expect(`${spread(basking)}${unit}`) : '',
      w.home.notBasking(aim),
      proven ? w.home.proofDial(temp(proven.low), temp(proven.high)) : '',
      !proven && advised ? w.home.likely(temp(advised.low), temp(advised.high)) : '',
      w.home.probeFix,
    ]
      .filter((said) => said !== '')
      .join(' '),
  );
  return lines;
}

/** Advice of the plan for the thermostat that warms the basking site. */
export function mainDial({ enclosure, plan }: PackFigures): DialAdvice | undefined {
  const main = enclosure.heaters[mainHeater(enclosure)]?.thermostatId;
  return plan.dial.find((one) => one.thermostatId === main);
}

const provenDial = ({ proof }: PackSubject) =>
  proof?.current && proof.answer.dial && Number.isFinite(proof.answer.dial.adviceC.low)
    ? proof.answer.dial.adviceC
    : null;

function settingOf(t: Thermostat, enclosure: Enclosure, tongue: Tongue): string {
  const { w, temp } = tongue;
  const driven = enclosure.heaters.filter((h) => h.thermostatId === t.id);
  const names = driven.map((h) => heaterName(h, tongue)).join(', ');
  const kind = capital(w.controls[t.control]);
  const [day, night] = [temp(t.setDayC, t.setDayC % 1 === 0 ? 0 : 1), temp(t.setNightC, t.setNightC % 1 === 0 ? 0 : 1)];
  if (driven.length > 0 && driven.every((h) => h.period === 'day')) return w.home.dialDayOnly(kind, names, day);
  return t.setDayC === t.setNightC ? w.home.dialSame(kind, names, day) : w.home.dial(kind, names, day, night);
}

function probeOf({ probe }: Thermostat, { w, m }: Tongue): string {
  if (probe.at === 'mat') return w.home.probeMat;
  const length = (metres: number): string => m.text('length', metres);
  return w.home.probe(length(probe.xM), length(probe.zM), w.home.probeAt[probe.at]);
}
