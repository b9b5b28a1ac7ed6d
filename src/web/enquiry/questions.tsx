// The questions of an enquiry about the animal and the household; those about room and box stand in room-questions.tsx.
import { useMemo } from 'react';
import type { LifeStage } from '../../physics/enclosure.ts';
import { Choice } from '../controls/choice.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { SelectField, type SelectOption } from '../controls/select-field.tsx';
import { SourceNote } from '../controls/source-note.tsx';
import { Tick } from '../controls/tick.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useAnswer, useDocumentActions } from '../state/document-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

interface FactsProps {
  readonly facts: FactsBrief | null;
}

const stages: readonly LifeStage[] = ['hatchling', 'young', 'adult'];

export function AnimalQuestion({ facts }: FactsProps) {
  const { t, measure } = useSheet();
  const { answer } = useDocumentActions();
  const speciesId = useAnswer('speciesId');
  const stage = useAnswer('stage');
  const species = facts?.species.find((row) => row.id === speciesId) ?? null;
  const adult = species?.adultLengthCm ?? null;
  const speciesOptions = useMemo(() => (facts?.species ?? []).map(speciesOption), [facts]);
  return (
    <>
      <SelectField
        label={t('animal.species')}
        value={species === null ? null : speciesId}
        onChange={(id) => answer({ speciesId: id })}
        placeholder={facts ? t('animal.choose') : t('animal.reading')}
        isDisabled={!facts}
        options={speciesOptions}
      />
      <Choice
        label={t('animal.stage')}
        value={stage}
        onChange={(value) => answer({ stage: value })}
        options={stages.map((value) => ({ value, text: t(`stage.${value}`) }))}
      />
      {species && adult && (
        <p className="aside">
          {t('animal.adultLength', {
            name: species.commonName,
            span: measure.span('length', adult.low / 100, adult.high / 100),
          })}{' '}
          <SourceNote facts={facts} source={adult.source} read={adult.read} />
        </p>
      )}
    </>
  );
}

function speciesOption({ id, commonName, scientificName }: FactsBrief['species'][number]): SelectOption {
  return {
    value: id,
    text: (
      <>
        {commonName} <i lang="la">{scientificName}</i>
      </>
    ),
  };
}

export function SizeQuestion() {
  const { t, settings } = useSheet();
  const { answer } = useDocumentActions();
  const totalLengthM = useAnswer('totalLengthM');
  const massG = useAnswer('massG');
  return (
    <div className="field-row">
      <QuantityField
        label={t('size.length')}
        kind="length"
        value={totalLengthM}
        onChange={(value) => answer({ totalLengthM: value }, 'length')}
        min={0.1}
        max={6}
        digits={settings.length === 'in' ? 1 : 0}
        hint={t('size.lengthHint')}
      />
      <QuantityField
        label={t('size.mass')}
        kind="mass"
        value={massG}
        onChange={(value) => answer({ massG: value }, 'mass')}
        min={1}
        max={60_000}
        digits={0}
        hint={t('size.massHint')}
      />
    </div>
  );
}

export function HouseholdQuestion({ facts }: FactsProps) {
  const { t } = useSheet();
  const { answer } = useDocumentActions();
  const explained = useAnswer('cautionsExplained');
  return (
    <>
      <div className="caution">
        <p className="caution-lead">{t('household.lead')}</p>
        <ul>
          <li>{t('household.under5')}</li>
          <li>{t('household.over65')}</li>
          <li>{t('household.pregnant')}</li>
          <li>{t('household.immunity')}</li>
        </ul>
        <p>{t('household.why')}</p>
        <p className="caution-who">
          {t('household.who')} <CautionSource facts={facts} topic="salmonella" />
        </p>
      </div>
      <Tick isSelected={explained} onChange={(value) => answer({ cautionsExplained: value })}>
        {t('household.explained')}
      </Tick>
      <p className="field-hint">{t('household.notStored')}</p>
    </>
  );
}

/** Source and date of the cautions on one topic, from the facts. */
function CautionSource({ facts, topic }: FactsProps & { readonly topic: string }) {
  const caution = facts?.cautions.find((row) => row.topic.toLowerCase().includes(topic));
  return caution ? <SourceNote facts={facts} source={caution.source} read={caution.read} /> : null;
}
