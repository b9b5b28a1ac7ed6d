// The price of power, the years that count, and whether what the plan shows is the customer's own already.
import { Button, Group, Input, Label, NumberField } from 'react-aria-components';
import { usualTariff } from '../../planning/search/search-input.ts';
import type { Shelf, ShelfKind } from '../../planning/shelf/shelf.ts';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';

interface CostSettingsProps {
  readonly tariffPerKWh: number;
  readonly years: number;
  readonly drawnIsOwned: boolean;
  readonly onTariff: (value: number) => void;
  readonly onYears: (value: number) => void;
  readonly onOwned: (value: boolean) => void;
  readonly shelf: Shelf | null;
  readonly ownedIds: readonly string[];
  readonly onOwnedIds: (ids: readonly string[]) => void;
}

export function CostSettings(props: CostSettingsProps) {
  const { t, measure } = useSheet();
  const { perKWh } = usualTariff;
  const currency = props.shelf?.currency ?? usualTariff.currency;
  const strange = currency !== usualTariff.currency && props.tariffPerKWh === perKWh;
  return (
    <fieldset className="try-group choose-settings">
      <legend>{t('choose.settings')}</legend>
      <div className="choose-fields">
        <Stepped
          label={t('choose.tariff', { currency })}
          value={props.tariffPerKWh}
          low={0}
          high={5}
          step={0.01}
          digits={4}
          onChange={props.onTariff}
        />
        <Stepped
          label={t('choose.years')}
          value={props.years}
          low={1}
          high={30}
          step={1}
          digits={0}
          onChange={props.onYears}
        />
        <Choice
          label={t('choose.owned')}
          value={props.drawnIsOwned ? 'yes' : 'no'}
          onChange={(value) => props.onOwned(value === 'yes')}
          options={(['no', 'yes'] as const).map((value) => ({ value, text: t(`choose.owned.${value}`) }))}
        />
      </div>
      <p className="aside">
        {t('choose.tariffNote', { value: measure.number(perKWh, 4), currency: usualTariff.currency })}{' '}
        {strange && <strong>{t('choose.tariffStrange', { currency })}</strong>}
      </p>
      {props.shelf && <OwnedArticles {...props} shelf={props.shelf} />}
    </fieldset>
  );
}

const ownedKinds: readonly ShelfKind[] = ['heater', 'thermostat', 'guard', 'holder', 'thermometer'];

type OwnedArticlesProps = Pick<CostSettingsProps, 'ownedIds' | 'onOwnedIds'> & { readonly shelf: Shelf };

/** What of the shelf the customer has at home already: it costs nothing and counts as in stock. */
function OwnedArticles({ shelf, ownedIds, onOwnedIds }: OwnedArticlesProps) {
  const { t, fromFacts } = useSheet();
  const turn = (id: string) =>
    onOwnedIds(ownedIds.includes(id) ? ownedIds.filter((one) => one !== id) : [...ownedIds, id]);
  return (
    <details className="owned-articles">
      <summary>{t('choose.has', { count: ownedIds.length })}</summary>
      {ownedKinds.map((kind) => (
        <fieldset key={kind} className="owned-kind">
          <legend>{t(`shelf.word.${kind}`)}</legend>
          {shelf.items
            .filter((item) => item.kind === kind)
            .map((item) => (
              <label key={item.id} className="owned-article">
                <input type="checkbox" checked={ownedIds.includes(item.id)} onChange={() => turn(item.id)} />
                <span>{fromFacts(item.name)}</span>
              </label>
            ))}
        </fieldset>
      ))}
    </details>
  );
}

interface SteppedProps {
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly digits: number;
  readonly onChange: (value: number) => void;
}

function Stepped({ label, value, low, high, step, digits, onChange }: SteppedProps) {
  const change = (next: number) => {
    if (Number.isFinite(next)) onChange(next);
  };
  return (
    <NumberField
      className="choose-number"
      value={value}
      minValue={low}
      maxValue={high}
      {...(digits === 0 ? { step } : {})}
      formatOptions={{ maximumFractionDigits: digits }}
      onChange={change}
    >
      <Label className="field-label">{label}</Label>
      <Group className="choose-number-row">
        <Button slot="decrement" className="choose-step">
          −
        </Button>
        <Input className="choose-input" />
        <Button slot="increment" className="choose-step">
          +
        </Button>
      </Group>
    </NumberField>
  );
}
