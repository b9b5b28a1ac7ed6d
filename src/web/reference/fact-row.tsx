// One value with its source, what other sources say and why this one is used, and the shop's own value when it has one.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Fact } from '../../husbandry/fact.ts';
import { factText, kindOf } from '../controls/parts-text.ts';
import { dateText } from '../controls/source-note.tsx';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useReader } from '../settings/use-reader.ts';
import { useWasBegun } from '../state/begun.ts';
import { OwnValueForm, ownValuePlace } from './own-value-form.tsx';
import { isRefused, type OwnValues, standingAt } from './reference-api.ts';
import { SourceMark } from './source-mark.tsx';

interface FactRowProps {
  readonly all: OwnValues;
  readonly path: string;
  readonly fact: Fact;
  /** Words to choose from; absent for numbers and free text. */
  readonly words?: readonly string[] | null;
  /** Said behind the name where a life stage has its own. */
  readonly stage?: string;
  readonly onChanged: () => void;
}

const lawKeys: readonly string[] = ['euAnnex', 'citesAppendix'];

export function useFactName(): (key: string) => string {
  const { t, measure } = useSheet();
  return (key) => {
    const known = ['fact', 'policy', 'row'].map((kind) => `${kind}.${key}`).find(isMessageKey);
    const name = known ? t(known as 'fact.rhPct') : key;
    // Values that carry their own unit need none in the name.
    return kindOf(key, measure) === null ? name : name.replace(/(?:,| in) mm$/, '');
  };
}

export function FactRow({ all, path, fact, words = null, stage, onChanged }: FactRowProps) {
  const { t, measure } = useSheet();
  const [open, setOpen] = useState(useWasBegun(ownValuePlace(path)));
  const reader = useReader();
  // What a law says is quoted in its own units.
  const prose = path.startsWith('law.') ? (text: string) => text : reader.prose;
  const key = path.split('.').at(-1) ?? '';
  const parts = path.split('.');
  const factName = useFactName();
  const called = parts[2] === 'drives' ? `${t('fact.drives')}: ${factName(key)}` : factName(key);
  const name = [called, stage].filter(Boolean).join(', ');
  const own = standingAt(all, path);
  const shipped = factText(key, fact, measure, t);
  const changeable = !lawKeys.includes(key);
  return (
    <div className="ref-fact" id={path}>
      <h3>{name}</h3>
      <div>
        <p className="ref-value">{own ? factText(key, own.value, measure, t) : shipped}</p>
        {own && (
          <p className="ref-own">
            {t('ref.own', { by: own.by, date: dateText(own.at.slice(0, 10), measure.locale), why: own.why })};{' '}
            {t('ref.shipped', { value: shipped })}
            {isRefused(all, path) && <b> {t('ref.refused')}</b>}
          </p>
        )}
        <p className="ref-from">
          <SourceMark of={fact} sources={all.sources} />
          {fact.note && <span> · {prose(fact.note)}</span>}
        </p>
        {fact.alternatives && fact.alternatives.length > 0 && (
          <div className="ref-others">
            <p>{t('ref.others')}:</p>
            <ul>
              {fact.alternatives.map((other, i) => (
                <li key={`${other.source}-${i}`}>
                  <b>{factText(key, other, measure, t)}</b> <SourceMark of={other} sources={all.sources} />
                  {other.note && <span> · {prose(other.note)}</span>}
                </li>
              ))}
            </ul>
            {fact.why && <p>{t('ref.used', { why: prose(fact.why) })}</p>}
          </div>
        )}
        {open && (
          <OwnValueForm
            path={path}
            name={name}
            fact={fact}
            words={words}
            own={own}
            onDone={() => {
              setOpen(false);
              onChanged();
            }}
          />
        )}
      </div>
      {changeable && (
        <Button
          className="quiet-button ref-change"
          aria-expanded={open}
          aria-label={open ? t('ref.cancel') : t('ref.changeOf', { what: name })}
          onPress={() => setOpen(!open)}
        >
          {open ? t('ref.cancel') : t('ref.change')}
        </Button>
      )}
    </div>
  );
}
