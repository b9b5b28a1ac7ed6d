// The shelf itself: its name, the currency of its prices, and whether anybody charges them.
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { Shelf } from '../../planning/shelf/shelf.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { keepBegun, useBegun, useWasBegun } from '../state/begun.ts';

type Head = Pick<Shelf, 'name' | 'currency' | 'invented'>;

const place = 'shelf-head';
const currencies = Intl.supportedValuesOf('currency');

export function ShelfHead({ shelf, onKeep }: { readonly shelf: Shelf; readonly onKeep: (head: Head) => void }) {
  const { t } = useSheet();
  const first: Head = { name: shelf.name, currency: shelf.currency, invented: shelf.invented };
  const { now: head, change } = useBegun(place, first);
  return (
    <details className="shelf-head" open={useWasBegun(place)}>
      <summary>{t('shelf.about')}</summary>
      <form
        className="article-form"
        onSubmit={(event) => {
          event.preventDefault();
          keepBegun(place, null);
          onKeep(head);
        }}
      >
        <div className="article-fields">
          <TextField className="text-field article-field" value={head.name} onChange={(name) => change({ name })}>
            <Label className="field-label">{t('shelf.field.name')}</Label>
            <Input className="text-input" />
          </TextField>
          <div className="article-field">
            <label className="field-label" htmlFor="shelf-currency">
              {t('shelf.currency')}
            </label>
            <select
              id="shelf-currency"
              className="select-plain"
              value={head.currency}
              onChange={(event) => change({ currency: event.target.value })}
            >
              {currencies.map((code) => (
                <option key={code}>{code}</option>
              ))}
            </select>
          </div>
          <label className="article-flag" htmlFor="shelf-invented">
            <input
              id="shelf-invented"
              type="checkbox"
              checked={head.invented}
              onChange={(event) => change({ invented: event.target.checked })}
            />
            <span>{t('shelf.invented')}</span>
          </label>
        </div>
        <Button className="button" type="submit">
          {t('shelf.keep')}
        </Button>
      </form>
    </details>
  );
}
