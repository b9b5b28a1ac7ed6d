// The questions of an enquiry about the animal and the household; those about room and box stand in room-questions.tsx.
import { Button, Checkbox, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import type { LifeStage } from '../../physics/enclosure.ts';
import { Choice } from '../controls/choice.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { SourceNote } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

interface FactsProps {
  readonly facts: FactsBrief | null;
}

const stages: readonly LifeStage[] = ['hatchling', 'young', 'adult'];

export function AnimalQuestion({ facts }: FactsProps) {
  const { t, measure } = useSheet();
  const { document, answer } = useDocument();
  const { speciesId, stage } = document.answers;
  const species = facts?.species.find((row) => row.id === speciesId) ?? null;
  const adult = species?.adultLengthCm ?? null;
  return (
    <>
      <Select
        className="select"
        value={speciesId}
        onChange={(key) => answer({ speciesId: key === null ? null : String(key) })}
        placeholder={facts ? t('animal.choose') : t('animal.reading')}
        isDisabled={!facts}
      >
        <Label className="field-label">{t('animal.species')}</Label>
        <Button className="select-button">
          <SelectValue className="select-value" />
          <span aria-hidden="true" className="select-arrow">
            ▾
          </span>
        </Button>
        <Popover className="popover select-popover">
          <ListBox className="listbox" items={facts?.species ?? []}>
            {(row) => (
              <ListBoxItem id={row.id} className="listbox-item" textValue={row.commonName}>
                <span>{row.commonName}</span> <i lang="la">{row.scientificName}</i>
              </ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </Select>
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

export function SizeQuestion() {
  const { t, settings } = useSheet();
  const { document, answer } = useDocument();
  const { totalLengthM, massG } = document.answers;
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
  const { document, answer } = useDocument();
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
      <Checkbox
        className="checkbox"
        isSelected={document.answers.cautionsExplained}
        onChange={(value) => answer({ cautionsExplained: value })}
      >
        <span className="checkbox-box" aria-hidden="true">
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <path d="M4 10.5l4 4 8-9" />
          </svg>
        </span>
        {t('household.explained')}
      </Checkbox>
      <p className="field-hint">{t('household.notStored')}</p>
    </>
  );
}

/** Source and date of the cautions on one topic, from the facts. */
function CautionSource({ facts, topic }: FactsProps & { readonly topic: string }) {
  const caution = facts?.cautions.find((row) => row.topic.toLowerCase().includes(topic));
  return caution ? <SourceNote facts={facts} source={caution.source} read={caution.read} /> : null;
}
