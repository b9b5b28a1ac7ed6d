// The shop's instruments: add one, check it step by step in ice or over salt, see what it is trusted with.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { carriedErrors } from '../../proving/instrument.ts';
import type { Asked } from '../animal/animal-api.ts';
import { numberFromText, numberMarks } from '../controls/number-text.ts';
import { storedFromShown } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { Faults } from './faults.tsx';
import { addInstrument, checkInstrument, type ShownInstruments } from './proof-api.ts';
import { wallDay } from './wall-words.ts';

interface InstrumentPartProps {
  readonly shown: ShownInstruments;
  readonly onChange: () => void;
}

interface Checking {
  readonly id: string;
  readonly kind: 'ice' | 'salt';
}

export function InstrumentPart({ shown, onChange }: InstrumentPartProps) {
  const { t, measure } = useSheet();
  const { now, change } = useBegun('instruments', { name: '', checking: null as Checking | null });
  const { name, checking } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const add = async () => {
    const added = await addInstrument(name);
    setAnswer(added);
    if (added.ok) change({ name: '' });
    onChange();
  };
  const error = (key: 'unchecked' | 'checked') => measure.text('difference', carriedErrors.tempC[key]);
  return (
    <section className="sheet-part" aria-labelledby="instruments-title">
      <h2 id="instruments-title">{t('proof.instruments')}</h2>
      <p className="field-hint">
        {t('proof.instrumentsSay', { unchecked: error('unchecked'), checked: error('checked') })}
      </p>
      {shown.instruments.length === 0 && <p>{t('proof.instrumentsNone')}</p>}
      <ul className="proof-list">
        {shown.instruments.map((i) => (
          <li key={i.id}>
            <strong>{i.name}</strong>
            <span>
              {i.temp.checked
                ? t('proof.instrumentChecked', {
                    offset: measure.text('difference', i.temp.correction),
                    day: wallDay(measure.locale, i.temp.dueS ?? 0),
                  })
                : t('proof.instrumentUnchecked')}
            </span>
            <Button className="quiet-button" onPress={() => change({ checking: { id: i.id, kind: 'ice' } })}>
              {t('proof.checkIce')}
            </Button>
            <Button className="quiet-button" onPress={() => change({ checking: { id: i.id, kind: 'salt' } })}>
              {t('proof.checkSalt')}
            </Button>
            {checking?.id === i.id && (
              <CheckForm
                key={checking.kind}
                id={i.id}
                kind={checking.kind}
                steps={shown.steps[checking.kind]}
                onDone={() => {
                  change({ checking: null });
                  onChange();
                }}
              />
            )}
          </li>
        ))}
      </ul>
      <label className="field-label">
        {t('proof.instrumentName')}
        <input
          className="text-input"
          maxLength={80}
          value={name}
          onChange={(event) => change({ name: event.target.value })}
        />
      </label>
      <Button className="button button-quiet" isDisabled={name.trim() === ''} onPress={() => void add()}>
        {t('proof.instrumentAdd')}
      </Button>
      <Faults answer={answer} />
    </section>
  );
}

interface CheckFormProps {
  readonly id: string;
  readonly kind: 'ice' | 'salt';
  readonly steps: ShownInstruments['steps']['ice'];
  readonly onDone: () => void;
}

function CheckForm({ id, kind, steps, onDone }: CheckFormProps) {
  const { t, measure, settings } = useSheet();
  const { now, change, forget } = useBegun(`check-${id}-${kind}`, {
    shown: ['', '', ''] as readonly string[],
    jarC: '',
  });
  const { shown, jarC } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const { temperature } = settings;
  const typed = (text: string): number => numberFromText(text, numberMarks(measure.locale)) ?? Number.NaN;
  const celsius = (text: string): number => storedFromShown('temperature', typed(text), settings);
  const readings = shown.map(kind === 'ice' ? celsius : typed).filter((v) => !Number.isNaN(v));
  const keep = async () => {
    const jar = kind === 'salt' && !Number.isNaN(typed(jarC)) ? { tempC: celsius(jarC) } : {};
    const done = await checkInstrument(id, {
      kind,
      shown: readings,
      ...(kind === 'salt' ? { salt: 'sodium-chloride' } : {}),
      ...jar,
    });
    setAnswer(done);
    if (!done.ok) return;
    forget();
    onDone();
  };
  return (
    <div className="check-form">
      <ol>
        {steps.map((step) => (
          <li key={step.id}>
            {t(`proof.check.${step.id as 'ice-fill'}`)}{' '}
            {step.waitMin > 0 && <em>{t('proof.checkWait', { minutes: step.waitMin })}</em>}
          </li>
        ))}
      </ol>
      <div className="field-row">
        {shown.map((value, i) => (
          <label key={i} className="field-label">
            {t('proof.checkShown', { n: i + 1 })} ({kind === 'ice' ? `°${temperature}` : '%'})
            <input
              className="text-input"
              inputMode="decimal"
              value={value}
              onChange={(event) => change({ shown: shown.map((old, k) => (k === i ? event.target.value : old)) })}
            />
          </label>
        ))}
        {kind === 'salt' && (
          <label className="field-label">
            {t('proof.checkJar')} (°{temperature})
            <input
              className="text-input"
              inputMode="decimal"
              value={jarC}
              onChange={(event) => change({ jarC: event.target.value })}
            />
          </label>
        )}
      </div>
      <Faults answer={answer} />
      <Button className="button" isDisabled={readings.length < 2} onPress={() => void keep()}>
        {t('proof.checkDone')}
      </Button>
    </div>
  );
}
