// Part 2: the dial, the drawing with what is to be read where, floor plan, the floor through a day, and the table behind them.
import { rangeOf } from '../../../husbandry/species-facts.ts';
import type { PlaceId } from '../../../physics/answer.ts';
import type { Enclosure, Heater } from '../../../physics/enclosure.ts';
import { floorLevels } from '../../../planning/floor-levels.ts';
import { baskingAimC, keeperTrims } from '../../../planning/member.ts';
import type { Interval } from '../../../planning/plan-answer.ts';
import { sprayNeedId, sureGrams } from '../../../planning/spray-verdict.ts';
import { type Block, text } from '../blocks.ts';
import { dayMapDrawing } from '../drawings/day-map.ts';
import { floorPlanDrawing } from '../drawings/floor-plan.ts';
import { type HungTag, sectionDrawing } from '../drawings/section.ts';
import type { PackFigures } from '../pack-job.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Tongue } from '../tongue.ts';
import { dialNotice, heaterName, mainDial } from './dial.ts';
import { expectations, expectTable, proofState, wantedInWords } from './expectations.ts';

/** Height of the inside of the box on paper [mm]: a tall box takes more of the page. */
const insideMm = { flat: 56, tall: 74, tight: 42 } as const;
const mapMm = { usual: 44, tight: 34 } as const;

export function homePart(subject: PackSubject, figures: PackFigures, tongue: Tongue, tight: boolean): readonly Block[] {
  const { w } = tongue;
  const { enclosure } = figures;
  const tall = enclosure.box.heightM > enclosure.box.lengthM;
  const most = tight ? insideMm.tight : tall ? insideMm.tall : insideMm.flat;
  return [
    { kind: 'notice', title: w.home.dialTitle, lines: dialNotice(figures, subject, tongue) },
    text(proofState(subject, figures, tongue)),
    { kind: 'facts', rows: partsOfHome(subject, figures, tongue) },
    expectTable(subject, figures, tongue),
    text(w.home.aimSay),
    {
      kind: 'drawing',
      drawn: {
        title: sectionTitle(subject, figures, tongue),
        drawing: section(subject, figures, tongue, most),
      },
    },
    pair(subject, figures, tongue, tight ? mapMm.tight : mapMm.usual),
  ];
}

/** The plan tells of a dial that was trimmed, where somebody can trim it; the proof of the dial as it stood. */
function sectionTitle(subject: PackSubject, figures: PackFigures, { w, temp }: Tongue): string {
  const { enclosure, climate } = figures;
  const dial = mainDial(figures);
  if (dial === undefined) return w.home.sectionBare;
  if (!expectations(subject, figures).fitted && keeperTrims(enclosure))
    return w.home.sectionTrimmed(temp(baskingAimC(climate)));
  const [day, night] = [temp(dial.setDayC, 0), temp(dial.setNightC, 0)];
  return w.home.section(day === night ? day : `${day} / ${night}`);
}

function section(subject: PackSubject, figures: PackFigures, tongue: Tongue, mostInsideMm: number) {
  const { w, m } = tongue;
  const { enclosure } = figures;
  const tags = tagsOf(subject, figures, tongue);
  const list = tags.map((tag) => `${tag.name}: ${tag.lines.join(', ')}`).join('. ');
  const words = {
    alt: w.home.sectionAlt(boxSize(enclosure, tongue), list),
    length: (metres: number) => m.text('length', metres, m.settings.length === 'in' ? 1 : metres < 0.1 ? 1 : 0),
    heaters: enclosure.heaters.map((h) => heaterLabel(h, enclosure, tongue)),
    probe: w.places.probe!,
  };
  return sectionDrawing(enclosure, tags, words, mostInsideMm);
}

/** A probe under a mat is named with the mat: there is no room for two names there. */
function heaterLabel(heater: Heater, { thermostats }: Enclosure, tongue: Tongue): string {
  const name = `${heaterName(heater, tongue)} ${tongue.m.text('power', heater.powerW)}`;
  const under = thermostats.some((t) => t.id === heater.thermostatId && t.probe.at === 'mat');
  return under ? `${name}, ${tongue.w.home.probeUnder}` : name;
}

function tagsOf(subject: PackSubject, figures: PackFigures, tongue: Tongue): readonly HungTag[] {
  const { w, temp, spread } = tongue;
  const { winterDay, winterNight } = expectations(subject, figures);
  const unit = `\u00a0°${tongue.m.settings.temperature}`;
  return hungPlaces(figures).flatMap(({ place, xM }): HungTag[] => {
    const [day, night] = [winterDay[place], winterNight[place]];
    if (!day) return [];
    const wanted = wantedInWords(place, figures.climate, tongue, false);
    return [
      {
        xM,
        name: w.places[place]!,
        lines: [
          `${w.home.day} ${spread(day)}${unit}`,
          ...(night ? [`${w.home.night} ${temp(night.median)}`] : []),
          ...(wanted === '' ? [] : [`${w.home.wanted} ${wanted}${unit}`]),
        ],
      },
    ];
  });
}

/** Four places that hang under the drawing, and where along the box. */
function hungPlaces({ enclosure, plan }: PackFigures): readonly { readonly place: PlaceId; readonly xM: number }[] {
  const { lengthM } = enclosure.box;
  const left = plan.winter.noon.warmEnd === 'left';
  const warmX = enclosure.heaters[0]?.xM ?? (left ? 0.2 : 0.8) * lengthM;
  const fromWarm = [...enclosure.hides].sort((a, b) => (left ? a.xM - b.xM : b.xM - a.xM));
  const coolX = (left ? 0.93 : 0.07) * lengthM;
  return [
    { place: 'basking-surface', xM: warmX },
    { place: 'warm-hide', xM: fromWarm[0]?.xM ?? warmX },
    { place: 'cool-hide', xM: (fromWarm.length > 1 ? fromWarm.at(-1)?.xM : undefined) ?? coolX },
    { place: 'cool-air', xM: coolX },
  ];
}

function pair({ animal }: PackSubject, figures: PackFigures, tongue: Tongue, heightOfMapMm: number): Block {
  const { w, m } = tongue;
  const { enclosure, plan, climate } = figures;
  const levels = floorLevels(plan.winter.day, enclosure.box.lengthM, enclosure.day, climate);
  const grown = rangeOf(animal.species, 'adult', 'totalLengthCm');
  const today = animal.totalLengthCm !== null ? animal.totalLengthCm / 100 : (enclosure.animal?.totalLengthM ?? null);
  const warmLeft = plan.winter.day.warmEnd === 'left';
  const length = (metres: number): string => m.text('length', metres);
  return {
    kind: 'pair',
    left: {
      title: w.home.plan,
      drawing: floorPlanDrawing(
        enclosure,
        { today, grown: grown === null ? null : grown.high / 100 },
        {
          alt: w.home.planAlt(boxSize(enclosure, tongue)),
          front: w.home.front,
          length,
          today: w.home.outline,
          grown: w.home.outlineGrown,
        },
      ),
    },
    right: {
      title: w.home.map,
      drawing: dayMapDrawing(
        levels,
        plan.winter.day,
        {
          alt: w.home.mapAlt(m.text('percent', levels.wantedFrac * 100)),
          left: warmLeft ? w.home.warmEnd : w.home.coolEnd,
          right: warmLeft ? w.home.coolEnd : w.home.warmEnd,
          heat: w.home.kit,
          clock: m.clock,
        },
        heightOfMapMm,
      ),
    },
    note: w.home.mapKey,
  };
}

const boxSize = ({ box }: Enclosure, { w, m }: Tongue): string => {
  const length = (metres: number): string => m.text('length', metres);
  return w.home.boxIs(length(box.lengthM), length(box.depthM), length(box.heightM));
};

/** Where more is sprayed than is sure to dry: how much does. */
function sprayStays({ plan }: PackFigures, { w, m }: Tongue): string[] {
  const need = plan.needs.find((one) => one.id === sprayNeedId);
  if (!plan.spray || !need || need.verdict === 'holds') return [];
  const { driesWinterGPerDay, driesSummerGPerDay } = plan.spray;
  const sure = (interval: Interval): string => m.text('mass', sureGrams(interval));
  return [w.home.mistStays(sure(driesWinterGPerDay), sure(driesSummerGPerDay))];
}

function partsOfHome(
  subject: PackSubject,
  figures: PackFigures,
  tongue: Tongue,
): readonly (readonly [string, string])[] {
  const { w, m, temp } = tongue;
  const { enclosure, plan } = figures;
  const { substrate, misting, room, heaters } = enclosure;
  const rows: (readonly [string, string])[] = [[w.home.box, boxSize(enclosure, tongue)]];
  for (const heater of heaters) {
    const guard = heater.mount === 'under-floor' ? w.home.matGuarded : heater.guarded ? w.home.guarded : w.home.bare;
    rows.push([w.home.kit, w.home.kitIs(heaterName(heater, tongue), m.text('power', heater.powerW), guard)]);
  }
  if (substrate) {
    const { materialId, depthM } = substrate;
    const name = w.substrates[materialId] ?? tongue.fact(subject.facts.substrates[materialId]?.name ?? materialId);
    rows.push([w.home.floor, w.home.floorIs(name, m.text('length', depthM, 1))]);
  }
  if (misting) {
    const at = misting.atHours.map((hour) => m.clock(hour)).join(', ');
    const said = w.home.mistIs(m.text('mass', misting.waterGPerDay), at);
    rows.push([w.home.mist, [said, ...sprayStays(figures, tongue)].join('. ')]);
  }
  rows.push([w.home.room, w.home.roomIs(temp(room.winter.lowC), temp(room.summer.highC))]);
  const { low, high } = plan.kWhPerYear;
  rows.push([w.home.energy, w.home.energyIs(m.number(low, 0), m.number(high, 0))]);
  return rows;
}
