// The size of the box, tried out like everything else: what stands in it moves along.

import type { Enclosure } from '../../physics/enclosure.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { type BoxSize, sizedBox, sizeLimits } from '../pictures/size.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';

const sides = ['lengthM', 'depthM', 'heightM'] as const satisfies readonly (keyof BoxSize)[];

export function BoxControls({ enclosure }: { readonly enclosure: Enclosure }) {
  const { t } = useSheet();
  const { changeEnclosure } = useDocument();
  const { lengthM, depthM, heightM } = enclosure.box;
  const size: BoxSize = { lengthM, depthM, heightM };
  return (
    <fieldset className="try-group">
      <legend>{t('try.box')}</legend>
      <div className="box-sides">
        {sides.map((side) => (
          <QuantityField
            key={side}
            label={t(`try.${side}`)}
            kind="length"
            value={size[side]}
            min={sizeLimits[side][0]}
            max={sizeLimits[side][1]}
            digits={0}
            compact
            onChange={(value) => {
              if (value !== null) changeEnclosure((now) => sizedBox(now, { ...size, [side]: value }), `size-${side}`);
            }}
          />
        ))}
      </div>
      <p className="field-hint">{t('try.boxHint')}</p>
    </fieldset>
  );
}
