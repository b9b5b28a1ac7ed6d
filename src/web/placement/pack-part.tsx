// The pack of this placement: choose the keeper's language and units, have it made, open or save it. It is computed for this very
// box, which takes some seconds; meanwhile the page says so and everything else goes on.
import './pack-part.css';
import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { useSaying } from '../animal/say.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { languageName } from '../messages/translate.ts';
import { Faults } from '../proof/faults.tsx';
import type { PaperChoice } from '../settings/paper-query.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useLanguageCodes } from '../settings/use-language-codes.ts';
import { fetchPack, type PackGiven, readPacks } from './pack-api.ts';
import { PacksGiven } from './packs-given.tsx';
import type { PlacementSheet } from './placement-api.ts';

/** The units of a pack as one choice, "F in g". */
const unitsKey = ({ temperature, length, mass }: PaperChoice): string => `${temperature} ${length} ${mass}`;
const unitsNamed = (key: string): string => `°${key.split(' ').join(', ')}`;
const unitsFrom = (key: string): Omit<PaperChoice, 'language'> => {
  const [temperature, length, mass] = key.split(' ') as ['C' | 'F', 'cm' | 'in', 'g' | 'oz'];
  return { temperature, length, mass };
};
const usualUnits = ['C cm g', 'F in g', 'F in oz'] as const;

type Made = { readonly language: string; readonly answer: Asked<string> };

export function PackPart({ sheet }: { readonly sheet: PlacementSheet }) {
  const { t, settings } = useSheet();
  const [choice, setChoice] = useState<PaperChoice>(sheet.packPrint ?? settings);
  const { language } = choice;
  const unitKeys = [...new Set([unitsKey(choice), unitsKey(settings), ...usualUnits])].sort();
  const codes = useLanguageCodes();
  const say = useSaying();
  const work = useLongWork<Asked<string>>({ keeps: false });
  const [made, setMade] = useState<Made | null>(null);
  const address = made?.answer.ok ? made.answer.value : null;
  useEffect(() => (address === null ? undefined : () => URL.revokeObjectURL(address)), [address]);

  const [packs, setPacks] = useState<readonly PackGiven[]>([]);
  const look = useCallback(async () => {
    const found = await readPacks(sheet.id);
    if (found.ok) setPacks(found.value.packs);
  }, [sheet.id]);
  useEffect(() => void look(), [look]);

  const make = async () => {
    setMade(null);
    const answer = await work.run((part) => fetchPack(sheet.id, choice, part().signal));
    if (answer !== null) setMade({ language, answer });
    await look();
  };

  return (
    <section className="sheet-part pack-part" aria-labelledby="pack-title">
      <h2 id="pack-title">{t('pack.title')}</h2>
      <p>{t(sheet.state === 'open' ? 'pack.leadDraft' : 'pack.lead')}</p>
      <div className="pack-tools">
        <div className="pack-choice">
          <label className="field-label" htmlFor="pack-language">
            {t('pack.language')}
          </label>
          <select
            id="pack-language"
            className="text-input"
            value={language}
            onChange={(event) => setChoice({ ...choice, language: event.target.value })}
          >
            {codes.map((code) => (
              <option key={code} value={code}>
                {languageName(code)}
              </option>
            ))}
          </select>
        </div>
        <div className="pack-choice">
          <label className="field-label" htmlFor="pack-units">
            {t('pack.units')}
          </label>
          <select
            id="pack-units"
            className="text-input"
            aria-describedby="pack-units-say"
            value={unitsKey(choice)}
            onChange={(event) => setChoice({ ...choice, ...unitsFrom(event.target.value) })}
          >
            {unitKeys.map((key) => (
              <option key={key} value={key}>
                {unitsNamed(key)}
              </option>
            ))}
          </select>
        </div>
        <Button className="button" isDisabled={work.sinceMs !== null} onPress={() => void make()}>
          {t(packs.length > 0 ? 'pack.makeNew' : 'pack.make')}
        </Button>
      </div>
      <p id="pack-units-say" className="field-hint">
        {t('pack.unitsSay')}
        {sheet.packPrint &&
          ` ${t('pack.printed', {
            on: say.day(sheet.packPrint.at.slice(0, 10)),
            by: sheet.packPrint.by,
            language: languageName(sheet.packPrint.language),
            units: unitsNamed(unitsKey(sheet.packPrint)),
          })}`}
      </p>
      <LongWork work={work} words={t('pack.busy')} />
      <p className="pack-progress" role="status">
        {address !== null && t('pack.ready')}
      </p>
      {address !== null && made && (
        <div className="pack-tools">
          <a className="button" href={address} target="_blank" rel="noreferrer" hrefLang={made.language}>
            {t('pack.open')}
          </a>
          <a
            className="button button-quiet"
            href={address}
            hrefLang={made.language}
            download={`${t('pack.file')}-${sheet.id.slice(0, 8)}-${made.language}.pdf`}
          >
            {t('pack.save')}
          </a>
        </div>
      )}
      <Faults answer={made?.answer ?? null} />
      <PacksGiven placementId={sheet.id} packs={packs} />
    </section>
  );
}
