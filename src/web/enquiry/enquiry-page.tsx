// The enquiry: eight questions that take two minutes. A scrolling sheet beside the growing drawing on a wide screen,
// one question at a time on a phone.
import { memo, type ReactNode, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { useMedia } from '../settings/use-width.ts';
import { firstOpenQuestion, isAnswered, type QuestionId, questionIds } from '../state/document.ts';
import { useDocumentActions, useDocumentPart } from '../state/document-context.tsx';
import { isStarted } from '../state/document-store.ts';
import type { FactsBrief } from '../worker/protocol.ts';
import { useFacts } from '../worker/use-facts.ts';
import { EarlierEnquiries } from './earlier-enquiries.tsx';
import { EnquiryDrawing } from './enquiry-drawing.tsx';
import { LabelQuestion } from './label-question.tsx';
import { AnimalQuestion, HouseholdQuestion, SizeQuestion } from './questions.tsx';
import { BoxQuestion, HumidityQuestion, SeasonQuestion, SunQuestion } from './room-questions.tsx';
import { useReadySearch } from './use-ready-search.ts';

function bodyOf(id: QuestionId, facts: FactsBrief | null): ReactNode {
  switch (id) {
    case 'animal':
      return <AnimalQuestion facts={facts} />;
    case 'size':
      return <SizeQuestion />;
    case 'household':
      return <HouseholdQuestion facts={facts} />;
    case 'winter':
      return <SeasonQuestion season="winter" />;
    case 'summer':
      return <SeasonQuestion season="summer" />;
    case 'humidity':
      return <HumidityQuestion />;
    case 'sun':
      return <SunQuestion />;
    case 'box':
      return <BoxQuestion />;
  }
}

interface QuestionProps {
  readonly id: QuestionId;
  readonly facts: FactsBrief | null;
}

const Question = memo(function Question({ id, facts }: QuestionProps) {
  const { t } = useSheet();
  const number = questionIds.indexOf(id) + 1;
  const answered = useDocumentPart(({ document }) => isAnswered(id, document));
  return (
    <section className="question" id={`question-${id}`} aria-labelledby={`question-${id}-title`} tabIndex={-1}>
      <h2 id={`question-${id}-title`}>
        <span className={answered ? 'question-number question-answered' : 'question-number'}>{number}</span>
        {t(`question.${id}`)}
        {answered && <span className="visually-hidden">({t('question.answered')})</span>}
      </h2>
      <p className="question-why">{t(`question.${id}.why`)}</p>
      {bodyOf(id, facts)}
    </section>
  );
});

export function EnquiryPage({ onPlan }: { readonly onPlan: () => void }) {
  const { t } = useSheet();
  const { startAfresh } = useDocumentActions();
  const facts = useFacts();
  const phone = useMedia('(max-width: 599px)');
  const open = useDocumentPart(({ document }) => firstOpenQuestion(document));
  useReadySearch(open === null);
  const started = useDocumentPart(isStarted);
  const [at, setAt] = useState(() => (open ? questionIds.indexOf(open) : questionIds.length - 1));
  const sheet = useRef<HTMLDivElement>(null);
  const show = (index: number) => {
    setAt(Math.min(questionIds.length - 1, Math.max(0, index)));
    scrollTo(0, 0);
  };
  const toPlan = () => {
    if (!open) return onPlan();
    if (phone) return show(questionIds.indexOf(open));
    const section = sheet.current?.querySelector<HTMLElement>(`#question-${open}`);
    section?.scrollIntoView({ block: 'center' });
    section?.focus();
  };

  return (
    <main className="board">
      <div className="board-drawing">
        <EnquiryDrawing facts={facts} question={phone ? (questionIds[at] ?? null) : null} />
      </div>
      <div className="board-sheet" ref={sheet}>
        {(!phone || at === 0) && (
          <div className="sheet-head">
            <h1>{t('enquiry.title')}</h1>
            <p className="lead">{t('enquiry.lead')}</p>
          </div>
        )}
        {phone ? (
          <>
            <p className="phone-progress" aria-live="polite">
              {t('enquiry.progress', { at: at + 1, of: questionIds.length })}
            </p>
            <Question id={questionIds[at] ?? 'animal'} facts={facts} />
            <div className="phone-steps">
              <Button className="button button-quiet" isDisabled={at === 0} onPress={() => show(at - 1)}>
                {t('enquiry.back')}
              </Button>
              {at < questionIds.length - 1 ? (
                <Button className="button" onPress={() => show(at + 1)}>
                  {t('enquiry.next')}
                </Button>
              ) : (
                <Button className="button" onPress={toPlan}>
                  {t('enquiry.toPlan')}
                </Button>
              )}
            </div>
          </>
        ) : (
          questionIds.map((id) => <Question key={id} id={id} facts={facts} />)
        )}
        {(!phone || at === questionIds.length - 1) && <LabelQuestion />}
        {!phone && (
          <div className="sheet-end">
            <Button className="button button-large" onPress={toPlan}>
              {t('enquiry.toPlan')}
            </Button>
            {open && <p className="field-hint">{t('enquiry.stillOpen', { what: t(`missing.${open}`) })}</p>}
          </div>
        )}
        {started && (
          <Button className="quiet-button" onPress={startAfresh}>
            {t('enquiry.afresh')}
          </Button>
        )}
        {(!phone || at === 0) && <EarlierEnquiries />}
      </div>
    </main>
  );
}
