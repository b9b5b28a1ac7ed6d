// Which of the branch's own values went into what stands on this sheet, with who, when and why; and whether they could
// be asked for at all.
import './own-values.css';
import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useShopValues } from '../state/shop-values.ts';
import { FaultText } from './fault-text.tsx';
import { OwnMarkNote } from './own-mark.tsx';
import { factText } from './parts-text.ts';
import { usePathName } from './path-name.ts';

export function OwnValuesUsed({ used }: { readonly used: UsedShopValues | null }) {
  const { t, measure } = useSheet();
  const known = useShopValues();
  const nameOf = usePathName();
  if (known && !known.reached)
    return (
      <p className="own-unreached" role="status">
        {t('own.unreached')}
      </p>
    );
  const { shopValues = [], refusedShopValues = [] } = used ?? {};
  if (shopValues.length === 0 && refusedShopValues.length === 0) return null;
  return (
    <section className="sheet-part own-values" aria-labelledby="own-title">
      <h2 id="own-title">{t('own.title')}</h2>
      <ul>
        {shopValues.map((own) => (
          <li key={own.path} data-own={own.path}>
            {nameOf(own.path)}: <b>{factText(own.path.split('.').at(-1) ?? '', own.value, measure, t)}</b>{' '}
            <OwnMarkNote own={own} />
          </li>
        ))}
        {refusedShopValues.map((fault) => (
          <li key={`${fault.field}${fault.code}`}>
            {nameOf(fault.field)}: {t('own.refused')} <FaultText fault={fault} />
          </li>
        ))}
      </ul>
    </section>
  );
}
