// The verdict first, then what to do, then why; needs by the readings and by the forecast; the dial.
import type { ProofAnswer } from '../../proving/verdict/proof-answer.ts';
import { nextWords, reasonWords, wantedWords } from '../../proving/words/say-proof.ts';
import { VerdictShape } from '../controls/verdict-mark.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { RuleWords } from './rule-part.tsx';

const verdictOf = { proven: 'holds', 'not-proven': 'not-known', failed: 'fails' } as const;
const verdictOfState = { held: 'holds', open: 'not-known', failed: 'fails', 'not-read': 'not-known' } as const;

export function VerdictPart({ answer, old }: { readonly answer: ProofAnswer; readonly old: boolean }) {
  const { t, measure } = useSheet();
  const speech = { t, measure, answer };
  const reason = reasonWords(speech, answer.ground, answer.reason);
  const next = nextWords(speech);
  return (
    <section className="sheet-part headline proof-verdict" aria-live="polite">
      <h1>
        <VerdictShape verdict={verdictOf[answer.verdict]} /> {t(`proof.verdict.${answer.verdict}`)}
      </h1>
      {old && <p className="field-fault">{t('proof.old')}</p>}
      <p className="headline-say" lang={reason.lang}>
        {reason.text}
      </p>
      <p>
        <strong>
          {t('proof.next')}: {t(`proof.next.${answer.next.id}`)}.
        </strong>{' '}
        <span lang={next.lang}>{next.text}</span>
      </p>
      {answer.reasons.length > 0 && (
        <details>
          <summary>{t('proof.why')}</summary>
          <ul>
            {answer.reasons.map((say, i) => {
              const { text, lang } = reasonWords(speech, answer.grounds?.[i], say);
              return (
                <li key={say} lang={lang}>
                  {text}
                </li>
              );
            })}
          </ul>
        </details>
      )}
      {answer.diagnosis.suspects.length > 0 && (
        <p>
          {t('proof.suspects')}:{' '}
          {answer.diagnosis.suspects
            .slice(0, 2)
            .map((s) => t(`proof.cause.${s.cause}`))
            .join('; ')}
        </p>
      )}
    </section>
  );
}

export function NeedsPart({ answer }: { readonly answer: ProofAnswer }) {
  const { t, measure } = useSheet();
  const kind = (n: ProofAnswer['needs'][number]) => (n.quantity === 'rhPct' ? 'percent' : 'temperature');
  const wanted = (low: number | null, high: number | null, of: 'percent' | 'temperature') =>
    wantedWords({ t, measure }, low, high, of);
  return (
    <section className="sheet-part" aria-labelledby="proof-needs">
      <h2 id="proof-needs">{t('proof.needs')}</h2>
      <ul className="proof-list">
        {answer.needs.map((n) => (
          <li key={n.id}>
            <strong>
              <VerdictShape verdict={verdictOfState[n.state]} /> {t(`proof.need.${n.id}`)}:{' '}
              {t(`proof.state.${n.state}`)}
            </strong>
            <span>
              {n.worst === null
                ? t('proof.wanted', { wanted: wanted(n.low, n.high, kind(n)) })
                : t('proof.worst', {
                    value: measure.text(kind(n), n.worst, 1),
                    error: n.quantity === 'rhPct' ? measure.number(n.error, 0) : measure.text('difference', n.error),
                    wanted: wanted(n.low, n.high, kind(n)),
                  })}
            </span>
          </li>
        ))}
      </ul>
      {answer.forecastNeeds.length > 0 && (
        <>
          <h2>{t('proof.coming')}</h2>
          <p className="field-hint">{t('proof.comingSay')}</p>
          <ul className="proof-list">
            {answer.forecastNeeds.map((n) => (
              <li key={n.id}>
                <strong>
                  <VerdictShape verdict={n.verdict} /> {t(`proof.coming.${n.id}`)}: {t(`verdict.${n.verdict}`)}
                </strong>
                <span>
                  {t('proof.found', {
                    value: measure.text('temperature', n.foundC.median),
                    low: measure.text('temperature', n.foundC.low),
                    high: measure.text('temperature', n.foundC.high),
                    room: measure.text('temperature', n.roomC),
                    share: Math.round(100 * n.shareHolding),
                  })}
                  ; {t('proof.wanted', { wanted: wanted(n.low, n.high, 'temperature') })}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      <Dial answer={answer} />
    </section>
  );
}

function Dial({ answer }: { readonly answer: ProofAnswer }) {
  const { t, measure } = useSheet();
  const { dial } = answer;
  if (dial === null) return null;
  const c = (v: number) => measure.text('temperature', v);
  return (
    <>
      <h2>{t('proof.dial')}</h2>
      <p>
        {dial.tooWeakShare > 0.5
          ? t('proof.dialWeak', { aim: c(dial.aimC) })
          : t('proof.dialSay', {
              aim: c(dial.aimC),
              value: c(dial.adviceC.median),
              low: c(dial.adviceC.low),
              high: c(dial.adviceC.high),
              now: c(dial.nowC),
            })}
      </p>
    </>
  );
}

export function LearnedPart({ answer }: { readonly answer: ProofAnswer }) {
  const { t, measure } = useSheet();
  return (
    <section className="sheet-part" aria-labelledby="proof-learned">
      {answer.nextReadings.length > 0 && (
        <>
          <h2>{t('proof.more')}</h2>
          <ul>
            {answer.nextReadings.slice(0, 3).map((n) => {
              const percent = measure.text('percent', 100 * (1 - n.widthLeftFrac));
              const key = `${n.kind}${n.place}`;
              if (n.place === null) return <li key={key}>{t('proof.morePower', { percent })}</li>;
              return (
                <li key={key}>
                  {t(n.kind === 'check' ? 'proof.moreCheck' : 'proof.morePlace', {
                    place: t(`proof.place.${n.place}`),
                    percent,
                  })}
                </li>
              );
            })}
          </ul>
        </>
      )}
      <details>
        <summary id="proof-learned">{t('proof.learned')}</summary>
        <p className="field-hint">{t('proof.learnedSay')}</p>
        <table className="figure-table">
          <tbody>
            {answer.learned.map((l) => (
              <tr key={l.name}>
                <th scope="row">{t(`proof.quantity.${l.name}`)}</th>
                <td>{t(`proof.mark.${l.mark}`)}</td>
                <td>{measure.text('percent', 100 * l.widthLeftFrac)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <h2>{t('proof.judgedBy')}</h2>
      <RuleWords rule={answer.rule} settings={answer.ruleSettings ?? []} />
    </section>
  );
}
