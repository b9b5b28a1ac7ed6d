// Which space standard the home is to meet; until one is chosen the room for the animal is not known.
import { standardPolicy } from '../../husbandry/shop-value.ts';
import { noStandard } from '../../husbandry/usual-standard.ts';
import { OwnMarkNote } from '../controls/own-mark.tsx';
import { SelectField } from '../controls/select-field.tsx';
import { SourceNote } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';
import { useShopValues } from '../state/shop-values.ts';
import { namedStandard, standardOf } from '../state/standard.ts';
import type { FactsBrief } from '../worker/protocol.ts';

export function StandardChoice({ facts }: { readonly facts: FactsBrief | null }) {
  const { t } = useSheet();
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
  return (
    <fieldset className="try-group">
      <legend>{t('standard.legend')}</legend>
      <SelectField
        label={t('standard.label')}
        hideLabel
        value={facts === null ? null : (chosen?.id ?? noStandard)}
        placeholder={t('animal.reading')}
        isDisabled={facts === null}
        onChange={(id) => answer({ standardId: id === noStandard ? null : id, standardChosen: true })}
        options={[
          { value: noStandard, text: t('standard.none') },
          ...fitting.map(({ id, name }) => ({ value: id, text: name })),
        ]}
      />
      <p className="field-hint">{t('standard.hint')}</p>
      {chosen && (
        <p className="aside">
          <SourceNote facts={facts} source={chosen.source} read={chosen.read} />
          {byShop && policy && <OwnMarkNote own={policy} />}
        </p>
      )}
    </fieldset>
  );
}
