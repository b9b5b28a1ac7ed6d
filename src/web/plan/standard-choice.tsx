// Which space standard the home is to meet; until one is chosen the room for the animal is not known.
import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import { standardPolicy } from '../../husbandry/shop-value.ts';
import { noStandard } from '../../husbandry/usual-standard.ts';
import { OwnMarkNote } from '../controls/own-mark.tsx';
import { SourceNote } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';
import { useShopValues } from '../state/shop-values.ts';
import { namedStandard, standardOf } from '../state/standard.ts';
import type { FactsBrief } from '../worker/protocol.ts';

export function StandardChoice({ facts }: { readonly facts: FactsBrief | null }) {
  const { t, settings } = useSheet();
  const { document, answer } = useDocument();
  const { speciesId } = document.answers;
  const own = useShopValues();
  const standardId = standardOf(document.answers, own?.values ?? []);
  const byShop = namedStandard(document.answers) === undefined;
  const policy = own?.values.find(({ path }) => path === standardPolicy);
  const fitting = (facts?.standards ?? []).filter(
    ({ speciesIds }) => speciesIds === null || (speciesId !== null && speciesIds.includes(speciesId)),
  );
  const chosen = fitting.find(({ id }) => id === standardId) ?? null;
  const lang = settings.language === 'en' ? undefined : 'en';
  return (
    <fieldset className="try-group">
      <legend>{t('standard.legend')}</legend>
      <Select
        className="select"
        value={standardId}
        onChange={(key) =>
          answer({ standardId: key === noStandard || key === null ? null : String(key), standardChosen: true })
        }
      >
        <Label className="visually-hidden">{t('standard.label')}</Label>
        <Button className="select-button">
          <SelectValue className="select-value" />
          <span aria-hidden="true" className="select-arrow">
            ▾
          </span>
        </Button>
        <Popover className="popover select-popover">
          <ListBox className="listbox">
            <ListBoxItem id={noStandard} className="listbox-item" textValue={t('standard.none')}>
              {t('standard.none')}
            </ListBoxItem>
            {fitting.map((row) => (
              <ListBoxItem key={row.id} id={row.id} className="listbox-item" textValue={row.name}>
                <span lang={lang}>{row.name}</span>
              </ListBoxItem>
            ))}
          </ListBox>
        </Popover>
      </Select>
      {chosen && (
        <p className="aside">
          <SourceNote facts={facts} source={chosen.source} read={chosen.read} />
          {byShop && policy && <OwnMarkNote own={policy} />}
        </p>
      )}
    </fieldset>
  );
}
