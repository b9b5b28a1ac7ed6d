// What is kept of the buyer: shown, saved as a file, erased for a reason. For a manager or the owner.
import './buyer-part.css';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { Faults } from '../proof/faults.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { type BuyerData, eraseBuyer, readBuyer } from './buyer-api.ts';
import type { PartProps } from './placement-page.tsx';
import { WordsField } from './words-field.tsx';

/** As the desk asks for it. */
const shortestReason = 5;

export function BuyerPart({ sheet, on }: PartProps) {
  const { t, measure } = useSheet();
  const [answer, setAnswer] = useState<Asked<BuyerData> | null>(null);
  if (!sheet.mayOverride) return null;
  const day = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium' });
  const { erasure } = sheet;
  return (
    <details className="sheet-part buyer-part">
      <summary>{t('privacy.title')}</summary>
      {erasure && (
        <p role="status">
          {t('privacy.done', { on: day.format(new Date(erasure.at)), by: erasure.by, reason: erasure.reason })}
        </p>
      )}
      <p>{t('privacy.lead')}</p>
      <Button className="button" onPress={() => void readBuyer(sheet.id).then(setAnswer)}>
        {t('privacy.show')}
      </Button>
      <Faults answer={answer} />
      {answer?.ok && <Kept data={answer.value} placementId={sheet.id} />}
      {erasure === null && (sheet.state === 'open' ? <p>{t('privacy.open')}</p> : <EraseForm sheet={sheet} on={on} />)}
    </details>
  );
}

function Kept({ data, placementId }: { readonly data: BuyerData; readonly placementId: string }) {
  const { t, measure } = useSheet();
  const day = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium' });
  const [address, setAddress] = useState('');
  useEffect(() => {
    const file = new Blob([JSON.stringify(data, null, 2)], { type: 'application/json' });
    const made = URL.createObjectURL(file);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [data]);
  return (
    <>
      {data.ownWords.length === 0 && <p>{t('privacy.none')}</p>}
      <ul className="buyer-words">
        {data.ownWords.map((one) => (
          <li key={`${one.part}${one.at}${one.way}${one.text}`}>
            <span>
              {t(`privacy.part.${one.part}`)}, <time dateTime={one.at}>{day.format(new Date(one.at))}</time>
            </span>
            <q>{one.text}</q>
          </li>
        ))}
      </ul>
      <a className="button" href={address} download={`buyer-${placementId.slice(0, 8)}.json`}>
        {t('privacy.save')}
      </a>
    </>
  );
}

function EraseForm({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const [reason, setReason] = useState('');
  const [sure, setSure] = useState(false);
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const ready = sure && reason.trim().length >= shortestReason;
  const erase = async () => {
    const done = await eraseBuyer(sheet.id, reason.trim());
    setAnswer(done);
    if (done.ok) on.again();
  };
  return (
    <details className="buyer-erase">
      <summary>{t('privacy.erase')}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (ready) void erase();
        }}
      >
        <p className="buyer-warning">{t('privacy.warning')}</p>
        <p className="field-hint">{t('privacy.beyond')}</p>
        <WordsField
          label={t('privacy.reason', { n: shortestReason })}
          value={reason}
          onChange={setReason}
          maxLength={300}
        />
        <label className="buyer-sure">
          <input type="checkbox" checked={sure} onChange={(event) => setSure(event.target.checked)} />
          {t('privacy.sure')}
        </label>
        <Button className="button" type="submit" isDisabled={!ready}>
          {t('privacy.do')}
        </Button>
        <Faults answer={answer} />
      </form>
    </details>
  );
}
