// Packs as they were given: the very file of each, and what a pack made today would say otherwise.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { useSaying } from '../animal/say.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { languageName } from '../messages/translate.ts';
import { Faults } from '../proof/faults.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { type PackGiven, type PartDifference, packAddress, readDifferences } from './pack-api.ts';

interface PacksGivenProps {
  readonly placementId: string;
  readonly packs: readonly PackGiven[];
}

export function PacksGiven({ placementId, packs }: PacksGivenProps) {
  const { t } = useSheet();
  if (packs.length === 0) return null;
  return (
    <>
      <h3>{t('pack.given')}</h3>
      <p className="field-hint">{t('pack.givenSay')}</p>
      <ul className="packs-given">
        {packs.map((pack) => (
          <GivenRow key={pack.id} placementId={placementId} pack={pack} />
        ))}
      </ul>
    </>
  );
}

type Differences = { readonly differences: readonly PartDifference[] };

function GivenRow({ placementId, pack }: { readonly placementId: string; readonly pack: PackGiven }) {
  const { t } = useSheet();
  const say = useSaying();
  const work = useLongWork<Asked<Differences>>({ keeps: false });
  const [answer, setAnswer] = useState<Asked<Differences> | null>(null);
  const compare = async () => {
    setAnswer(null);
    setAnswer(await work.run(() => readDifferences(placementId, pack.id)));
  };
  const said = t(pack.state === 'open' ? 'pack.draftOn' : 'pack.givenOn', {
    on: say.day(pack.at.slice(0, 10)),
    by: pack.by,
    language: languageName(pack.language),
    units: `°${pack.temperature}, ${pack.length}, ${pack.mass}`,
  });
  if (pack.sizeBytes === 0)
    return (
      <li>
        {said}: {t('pack.givenErased')}
      </li>
    );
  return (
    <li>
      <p>{said}</p>
      <p className="field-hint pack-hash">{t('pack.givenHash', { hash: pack.sha256 })}</p>
      <div className="pack-tools">
        <a
          className="button button-quiet"
          href={packAddress(placementId, pack.id)}
          target="_blank"
          rel="noreferrer"
          hrefLang={pack.language}
        >
          {t('pack.copy')}
        </a>
        <Button className="quiet-button" isDisabled={work.sinceMs !== null} onPress={() => void compare()}>
          {t('pack.differs')}
        </Button>
      </div>
      <LongWork work={work} words={t('pack.busy')} />
      <Faults answer={answer} />
      {answer?.ok && <DifferenceList differences={answer.value.differences} language={pack.language} />}
    </li>
  );
}

function DifferenceList({ differences, language }: Differences & { readonly language: string }) {
  const { t } = useSheet();
  if (differences.length === 0) return <p role="status">{t('pack.differsNot')}</p>;
  return (
    <div role="status">
      <p>{t('pack.differsIn')}</p>
      <ul className="pack-differences">
        {differences.map(({ title, was, now }) => (
          <li key={title}>
            <b lang={language}>{title}</b>
            {was.map((line, i) => (
              <p key={`was-${i}-${line}`}>
                {t('pack.wasSaid')} <s lang={language}>{line}</s>
              </p>
            ))}
            {now.map((line, i) => (
              <p key={`now-${i}-${line}`}>
                {t('pack.nowSaid')} <span lang={language}>{line}</span>
              </p>
            ))}
          </li>
        ))}
      </ul>
    </div>
  );
}
