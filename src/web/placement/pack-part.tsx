// The pack of this placement: choose the keeper's language, have it made, open or save it. It is computed for this very
// box, which takes some seconds; meanwhile the page says so and everything else goes on.
import './pack-part.css';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { languageName } from '../messages/translate.ts';
import { Faults } from '../proof/faults.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useLanguageCodes } from '../settings/use-language-codes.ts';
import { fetchPack } from './pack-api.ts';
import type { PlacementSheet } from './placement-api.ts';

type Made = { readonly language: string; readonly answer: Asked<string> };

export function PackPart({ sheet }: { readonly sheet: PlacementSheet }) {
  const { t, settings } = useSheet();
  const [language, setLanguage] = useState(settings.language);
  const codes = useLanguageCodes();
  const work = useLongWork<Asked<string>>({ keeps: false });
  const [made, setMade] = useState<Made | null>(null);
  const address = made?.answer.ok ? made.answer.value : null;
  useEffect(() => (address === null ? undefined : () => URL.revokeObjectURL(address)), [address]);

  const make = async () => {
    setMade(null);
    const answer = await work.run((part) => fetchPack(sheet.id, language, settings, part().signal));
    if (answer !== null) setMade({ language, answer });
  };

  return (
    <section className="sheet-part pack-part" aria-labelledby="pack-title">
      <h2 id="pack-title">{t('pack.title')}</h2>
      <p>{t(sheet.state === 'open' ? 'pack.leadDraft' : 'pack.lead')}</p>
      <div className="pack-tools">
        <label className="field-label" htmlFor="pack-language">
          {t('pack.language')}
        </label>
        <select
          id="pack-language"
          className="text-input"
          value={language}
          onChange={(event) => setLanguage(event.target.value)}
        >
          {codes.map((code) => (
            <option key={code} value={code}>
              {languageName(code)}
            </option>
          ))}
        </select>
        <Button className="button" isDisabled={work.sinceMs !== null} onPress={() => void make()}>
          {t('pack.make')}
        </Button>
      </div>
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
    </section>
  );
}
