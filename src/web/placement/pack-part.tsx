// The pack of this placement: choose the keeper's language, have it made, open or save it. It is computed for this very
// box, which takes some seconds; meanwhile the page says so and everything else goes on.
import './pack-part.css';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
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
  const [busySince, setBusySince] = useState<number | null>(null);
  const [made, setMade] = useState<Made | null>(null);
  const seconds = useSecondsSince(busySince);
  const address = made?.answer.ok ? made.answer.value : null;
  useEffect(() => (address === null ? undefined : () => URL.revokeObjectURL(address)), [address]);

  const make = async () => {
    setBusySince(Date.now());
    setMade(null);
    const answer = await fetchPack(sheet.id, language, settings);
    setBusySince(null);
    setMade({ language, answer });
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
        <Button className="button" isDisabled={busySince !== null} onPress={() => void make()}>
          {t('pack.make')}
        </Button>
      </div>
      <p className="pack-progress" role="status">
        {busySince !== null && t('pack.busy', { seconds })}
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

/** Whole seconds, counted while something is waited for. */
function useSecondsSince(since: number | null): number {
  const [now, setNow] = useState(0);
  useEffect(() => {
    if (since === null) return;
    setNow(Date.now());
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, [since]);
  return since === null ? 0 : Math.max(0, Math.round((now - since) / 1000));
}
