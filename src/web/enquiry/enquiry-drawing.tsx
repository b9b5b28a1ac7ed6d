// What the drawing board shows while the questions are answered: the room through the year against what the animal
// wants, and the chosen box with the animal to scale.
import { memo, useDeferredValue } from 'react';
import { FloorPlan } from '../pictures/floor-plan.tsx';
import { RoomSpans } from '../pictures/room-spans.tsx';
import { SectionDrawing } from '../pictures/section-drawing.tsx';
import { wantedClimate } from '../pictures/wanted.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useMedia, useWidth } from '../settings/use-width.ts';
import type { PlanDocument, QuestionId } from '../state/document.ts';
import { useDocumentPart } from '../state/document-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

interface EnquiryDrawingProps {
  readonly facts: FactsBrief | null;
  /** The one question on a phone's screen, or null where all stand on the sheet. */
  readonly question: QuestionId | null;
}

interface DrawnEnquiryProps extends EnquiryDrawingProps {
  readonly document: PlanDocument;
}

/** Most height of the box on the sheet [px], so that the questions stay in sight. */
const heights = { desk: 280, tablet: 150, phone: 110 } as const;

/** Questions whose answer the temperature spans show. */
const aboutTemperature: readonly QuestionId[] = ['animal', 'winter', 'summer'];

/** Drawn after the answer stands on the sheet: the hand never waits for the pencil. */
export function EnquiryDrawing(props: EnquiryDrawingProps) {
  const document = useDeferredValue(useDocumentPart((state) => state.document));
  return <DrawnEnquiry {...props} document={document} />;
}

const DrawnEnquiry = memo(function DrawnEnquiry({ facts, question, document }: DrawnEnquiryProps) {
  const { t } = useSheet();
  const [ref, width] = useWidth<HTMLDivElement>(640);
  const wide = useMedia('(min-width: 1024px)');
  const { answers, enclosure } = document;
  const mostInsideHeight = wide ? heights.desk : question === null ? heights.tablet : heights.phone;
  const needs =
    answers.speciesId && answers.stage
      ? facts?.species.find((row) => row.id === answers.speciesId)?.climate[answers.stage]
      : null;
  const drawn = enclosure && {
    ...enclosure,
    animal:
      answers.speciesId && answers.stage && answers.totalLengthM
        ? {
            speciesId: answers.speciesId,
            stage: answers.stage,
            totalLengthM: answers.totalLengthM,
            massG: answers.massG,
          }
        : null,
  };
  return (
    <div ref={ref} className="enquiry-drawing">
      {drawn && !(question !== null && aboutTemperature.includes(question)) && (
        <>
          <SectionDrawing
            enclosure={drawn}
            readings={null}
            climate={null}
            width={width}
            mostInsideHeight={mostInsideHeight}
            describedBy="enquiry-drawing-say"
            moves={null}
          />
          {wide && (
            <FloorPlan
              enclosure={drawn}
              readings={null}
              climate={null}
              width={width}
              mostInsideHeight={180}
              describedBy="enquiry-drawing-say"
              moves={null}
            />
          )}
        </>
      )}
      {!drawn && question === null && <EmptyBoard width={width} />}
      {(question === null || aboutTemperature.includes(question)) && (
        <RoomSpans answers={answers} climate={needs ? wantedClimate(needs) : null} width={width} />
      )}
      <p id="enquiry-drawing-say" className="visually-hidden">
        {t('enquiry.drawingSay')}
      </p>
    </div>
  );
});

/** An empty sheet with the place where the home will be drawn. */
function EmptyBoard({ width }: { readonly width: number }) {
  const { t } = useSheet();
  const boxWidth = width * 0.62;
  const boxHeight = Math.min(260, boxWidth * 0.5);
  const left = (width - boxWidth) / 2;
  return (
    <svg className="drawing empty-board" viewBox={`0 0 ${width} ${boxHeight + 60}`} width="100%" aria-hidden="true">
      <rect className="empty-box" x={left} y={24} width={boxWidth} height={boxHeight} />
      <line className="empty-ground" x1={left - 30} x2={left + boxWidth + 30} y1={boxHeight + 24} y2={boxHeight + 24} />
      <text className="empty-say" x={width / 2} y={boxHeight / 2 + 30} textAnchor="middle">
        {t('enquiry.emptyBoard')}
      </text>
    </svg>
  );
}
