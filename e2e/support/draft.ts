// An enquiry as the device keeps it, with the home of an example: a journey that begins at the plan.
import { readFileSync } from 'node:fs';

/** What a person has answered, as the device keeps it. */
export function enquiryDraft(box: string): string {
  const file = readFileSync(new URL(`../../data/examples/${box}.json`, import.meta.url), 'utf8');
  const enclosure = JSON.parse(file);
  const { animal, room } = enclosure;
  const answers = {
    label: '',
    speciesId: animal.speciesId,
    stage: animal.stage,
    totalLengthM: animal.totalLengthM,
    massG: animal.massG,
    winterLowC: room.winter.lowC,
    winterHighC: room.winter.highC,
    summerLowC: room.summer.lowC,
    summerHighC: room.summer.highC,
    rhPct: room.winter.rhPct,
    summerRhPct: null,
    rhMeasured: true,
    sun: 'none',
    startFrom: box,
    cautionsExplained: true,
    standardId: 'home-third',
  };
  return JSON.stringify({ document: { format: 'warmstead-enquiry', version: 1, answers, enclosure }, savedAs: null });
}
