// The proof of one home: its drawing and its curves beside the verdict, and every way for readings to come in.
import './proof.css';
import { useCallback, useState } from 'react';
import { Button } from 'react-aria-components';
import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Asked } from '../animal/animal-api.ts';
import { readEnquiry } from '../api/client.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { OwnValuesUsed } from '../controls/own-values-used.tsx';
import { DrawingPatterns } from '../pictures/drawing-patterns.tsx';
import { SectionDrawing } from '../pictures/section-drawing.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { go } from '../shell/router.ts';
import { composedEnclosure } from '../state/document.ts';
import { isPlanDocument, withEveryAnswer } from '../state/draft-storage.ts';
import { CurvesDrawing } from './curves-drawing.tsx';
import { Faults } from './faults.tsx';
import { FilePart } from './file-part.tsx';
import { HandPart } from './hand-part.tsx';
import { InstrumentPart } from './instrument-part.tsx';
import { KeeperPart } from './keeper-part.tsx';
import { LivePart } from './live-part.tsx';
import { judge, readCurves, readFiles, readInstruments, readProof } from './proof-api.ts';
import { RulePart } from './rule-part.tsx';
import { useKept } from './use-kept.ts';
import { LearnedPart, NeedsPart, VerdictPart } from './verdict-part.tsx';

export function ProofPage({ id }: { readonly id: string }) {
  const { t } = useSheet();
  const enquiry = useKept(useCallback(() => readEnquiry(id), [id]));
  const files = useKept(useCallback(() => readFiles(id), [id]));
  const curves = useKept(useCallback(() => readCurves(id), [id]));
  const proof = useKept(useCallback(() => readProof(id), [id]));
  const instruments = useKept(readInstruments);
  const work = useLongWork<Asked<unknown>>({ keeps: true });
  const working = work.sinceMs !== null;
  const [judged, setJudged] = useState<Asked<unknown> | null>(null);
  const [ref, width] = useWidth<HTMLDivElement>(700);
  if (enquiry.answer === null) return <main className="notice">{t('proof.waiting')}</main>;
  const home = enquiry.answer.ok ? homeFrom(enquiry.answer.value.document) : null;
  if (home === null) return <main className="notice">{t('proof.missing')}</main>;

  const changed = () => {
    files.again();
    curves.again();
    proof.again();
  };
  const ask = async () => {
    setJudged(null);
    setJudged(await work.run((part) => judge(id, home.whole, part())));
    proof.again();
  };
  const kept = proof.answer?.ok ? proof.answer.value : null;
  const answer = kept?.proof?.answer ?? null;
  const read = curves.answer?.ok ? curves.answer.value : null;
  const drawn = read !== null && read.curves.length > 0 ? read : null;
  const evidence = answer?.diagnosis.suspects.slice(0, 1).flatMap((s) => s.evidence) ?? [];
  return (
    <main className="board proof">
      <DrawingPatterns />
      <div className="board-drawing" ref={ref}>
        <p id="proof-drawing" className="visually-hidden">
          {home.drawn.name}
        </p>
        <SectionDrawing
          enclosure={home.drawn}
          readings={null}
          climate={null}
          width={width}
          mostInsideHeight={230}
          describedBy="proof-drawing"
          moves={null}
        />
        {drawn && <CurvesDrawing curves={drawn} day={home.drawn.day} evidence={evidence} width={width} />}
      </div>
      <div className="board-sheet">
        <p className="plan-what">
          <span>{home.drawn.name}</span>
          <a
            href={`/plan/${id}`}
            onClick={(event) => {
              event.preventDefault();
              go(`/plan/${id}`);
            }}
          >
            {t('proof.back')}
          </a>
        </p>
        {answer && kept ? (
          <VerdictPart answer={answer} old={!kept.current} />
        ) : (
          <h1 className="headline-wait">{t('proof.verdict.none')}</h1>
        )}
        {read !== null && drawn === null && <p>{t('proof.nothingRead')}</p>}
        {drawn && (
          <Button className="button button-large" isDisabled={working} onPress={() => void ask()}>
            {t(answer ? 'proof.again' : 'proof.judge')}
          </Button>
        )}
        <LongWork work={work} words={t('proof.judging')} />
        <Faults answer={judged} />
        {answer && <NeedsPart answer={answer} />}
        {kept?.proof && <OwnValuesUsed used={ownValuesOf(kept.proof.inputs)} />}
        <FilePart
          enquiryId={id}
          files={files.answer?.ok ? files.answer.value.files : []}
          aside={files.answer?.ok ? files.answer.value.aside : []}
          instruments={instruments.answer?.ok ? instruments.answer.value.instruments : []}
          onChange={changed}
        />
        <HandPart enquiryId={id} onChange={changed} />
        <KeeperPart enquiryId={id} />
        <LivePart enquiryId={id} />
        {instruments.answer?.ok && <InstrumentPart shown={instruments.answer.value} onChange={instruments.again} />}
        {kept && <RulePart shown={kept.branchRule} onChange={proof.again} />}
        {answer && <LearnedPart answer={answer} />}
      </div>
    </main>
  );
}

interface Home {
  /** As drawn. */
  readonly drawn: Enclosure;
  /** With room and animal filled in from the answers; null while one is open. */
  readonly whole: Enclosure | null;
}

function homeFrom(document: unknown): Home | null {
  if (!isPlanDocument(document) || document.enclosure === null) return null;
  return { drawn: document.enclosure, whole: composedEnclosure(withEveryAnswer(document)) };
}

/** Proofs kept before shop values were named have none. */
const ownValuesOf = ({ shopValues = [], refusedShopValues = [] }: Partial<UsedShopValues>): UsedShopValues => ({
  shopValues,
  refusedShopValues,
});
