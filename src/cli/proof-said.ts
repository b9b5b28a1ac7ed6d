// The sentences of a proof as the terminal says them: in English as the proof wrote them, else by what they are about.
import type { Suspect } from '../proving/diagnosis/cause.ts';
import type { LogQuestion } from '../proving/files/understood.ts';
import type { Ground } from '../proving/verdict/ground.ts';
import type { ProofAnswer } from '../proving/verdict/proof-answer.ts';
import { causeWords } from '../proving/verdict/words.ts';
import { proofSayer } from '../proving/words/proof-sayer.ts';
import { nextWords, reasonWords, type SayProof } from '../proving/words/say-proof.ts';
import { measureFor } from '../shared/measure.ts';
import type { Display } from './display.ts';
import { saidIn } from './need-words.ts';

export interface ProofSaid {
  readonly reason: (ground: Ground | undefined, english: string) => string;
  readonly next: () => string;
  readonly suspect: (suspect: Suspect) => string;
  readonly question: (question: LogQuestion) => string;
  readonly order: (order: 'numbers' | 'dmy' | 'mdy' | 'ymd') => string;
  readonly learned: (one: ProofAnswer['learned'][number]) => string;
  /** What the rule rests on. */
  readonly rule: () => string;
}

/** Spaces of a terminal break lines; those of the screens do not. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

export function proofSaid(answer: ProofAnswer, show: Display): ProofSaid {
  const { language, units } = show;
  const us = units === 'us';
  const measure = measureFor({
    book: language,
    temperature: us ? 'F' : 'C',
    length: us ? 'in' : 'cm',
    mass: 'g',
  });
  const t = proofSayer(language);
  const speech = { t, measure, answer };
  const isEnglish = language === 'en';
  const seen = ({ evidence }: Suspect): string => {
    const first = evidence[0];
    return first === undefined ? '' : saidIn(show, first.told, first.say);
  };
  return {
    reason: (ground, english) => (isEnglish ? show.prose(english) : plain(reasonWords(speech, ground, english).text)),
    next: () => (isEnglish ? show.prose(answer.next.say) : plain(nextWords(speech).text)),
    suspect: (one) => `${isEnglish ? causeWords[one.cause] : t(`proof.cause.${one.cause}`)}. ${seen(one)}`,
    question: ({ id, say }) => (isEnglish ? say : t(`proof.ground.question.${id}`)),
    order: (order) => (isEnglish ? order : t(`proof.order.${order}`)),
    learned: ({ name }) => (isEnglish ? name : t(`proof.quantity.${name}`)),
    rule: () => (isEnglish ? answer.ruleBasis : ruleWords(answer, t, measure.number)),
  };
}

function ruleWords(
  { rule, ruleSettings = [] }: ProofAnswer,
  t: SayProof,
  number: (value: number, digits: number) => string,
): string {
  const set = ruleSettings.map(({ key, value, by, at, why }) =>
    t('proof.ruleShop', {
      what: t(`proof.ruleKey.${key}`),
      value: number(value / (key.endsWith('S') ? 60 : 1), 0),
      by,
      day: at.slice(0, 10),
      why,
    }),
  );
  const said = t('proof.ruleSay', {
    nights: rule.nights,
    interval: number(rule.longestIntervalS / 60, 0),
    gap: number(rule.longestGapS / 60, 0),
    hand: rule.handReadingsPerDay,
  });
  return [said, ...set, t('proof.ruleOurs')].join(' ');
}
