// The verdict that counts is the server's: one press has it worked out there and kept with the enquiry. What is kept is shown,
// also after a stop that came too late, and can be set aside at once.
import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Enclosure } from '../../physics/enclosure.ts';
import { type Answered, type KeptPlan, type KeptVerdict, keepVerdict, readKeptPlan } from '../api/client.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';
import { namedStandard } from '../state/standard.ts';
import { KeptPlanLine } from './kept-plan.tsx';

export function KeepVerdict({ enclosure }: { readonly enclosure: Enclosure }) {
  const { t } = useSheet();
  const { savedAs, document } = useDocument();
  const standardId = namedStandard(document.answers);
  const work = useLongWork<Answered<KeptVerdict>>({ keeps: true });
  const working = work.sinceMs !== null;
  const [answer, setAnswer] = useState<Answered<KeptVerdict> | null>(null);
  useEffect(() => setAnswer(null), [enclosure, standardId]);
  const { kept, again } = useNewestKept(savedAs?.id ?? null);
  if (!savedAs) return null;
  const keep = async () => {
    setAnswer(null);
    setAnswer(await work.run((part) => keepVerdict(savedAs.id, enclosure, standardId, part())));
    await again();
  };
  return (
    <div className="keep-verdict">
      <LongWork work={work} words={t('plan.keeping')} />
      {!working && kept && <KeptPlanLine enquiryId={savedAs.id} plan={kept} onChange={() => void again()} />}
      {!working && answer && !answer.ok && (
        <p className="field-fault" role="alert">
          {t('plan.verdictNotKept')}
        </p>
      )}
      {!working && !answer?.ok && (
        <Button className="button button-quiet" onPress={() => void keep()}>
          {t('plan.keepVerdict')}
        </Button>
      )}
    </div>
  );
}

/** What was kept last with an enquiry, set aside or not. */
function useNewestKept(enquiryId: string | null) {
  const [kept, setKept] = useState<KeptPlan | null>(null);
  const again = useCallback(async () => {
    if (enquiryId === null) return setKept(null);
    const found = await readKeptPlan(enquiryId);
    if (found.ok) setKept(found.value.results[0] ?? null);
  }, [enquiryId]);
  useEffect(() => void again(), [again]);
  return { kept, again };
}
