// The verdict that counts is the server's: one press has it worked out there and kept with the enquiry.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Enclosure } from '../../physics/enclosure.ts';
import { type Answered, type KeptVerdict, keepVerdict } from '../api/client.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';
import { namedStandard } from '../state/standard.ts';

export function KeepVerdict({ enclosure }: { readonly enclosure: Enclosure }) {
  const { t } = useSheet();
  const { savedAs, document } = useDocument();
  const standardId = namedStandard(document.answers);
  const work = useLongWork<Answered<KeptVerdict>>({ keeps: true });
  const working = work.sinceMs !== null;
  const [answer, setAnswer] = useState<Answered<KeptVerdict> | null>(null);
  useEffect(() => setAnswer(null), [enclosure, standardId]);
  if (!savedAs) return null;
  const keep = async () => {
    setAnswer(null);
    setAnswer(await work.run((part) => keepVerdict(savedAs.id, enclosure, standardId, part())));
  };
  return (
    <div className="keep-verdict" role="status">
      <LongWork work={work} words={t('plan.keeping')} />
      {!working && answer?.ok && (
        <p data-kept={answer.value.answer.verdict}>
          {t('plan.verdictKept', {
            verdict: t(`verdict.${answer.value.answer.verdict}`),
            model: answer.value.modelVersion,
          })}
        </p>
      )}
      {!working && answer && !answer.ok && <p className="field-fault">{t('plan.verdictNotKept')}</p>}
      {!working && !answer?.ok && (
        <Button className="button button-quiet" onPress={() => void keep()}>
          {t('plan.keepVerdict')}
        </Button>
      )}
    </div>
  );
}
