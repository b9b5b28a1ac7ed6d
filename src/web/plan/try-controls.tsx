// What can be tried out while the drawing answers: the room, the heaters, the thermostats and where things stand.
import type { Enclosure, Heater, Thermostat } from '../../physics/enclosure.ts';
import { QuantityDial } from '../controls/quantity-dial.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { usualRoomOf } from '../enquiry/usual-rooms.ts';
import { heaterHasHeight, movedHeater, movedProbe } from '../pictures/move.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';
import type { Season } from './moment.ts';

export function RoomControls({ season }: { readonly season: Season }) {
  const { t } = useSheet();
  const { document, answer } = useDocument();
  const lowKey = season === 'winter' ? 'winterLowC' : 'summerLowC';
  const highKey = season === 'winter' ? 'winterHighC' : 'summerHighC';
  const low = document.answers[lowKey] ?? 0;
  const high = document.answers[highKey] ?? 0;
  const rhPct = document.answers.rhPct ?? 0;
  return (
    <fieldset className="try-group">
      <legend>{t(season === 'winter' ? 'try.roomWinter' : 'try.roomSummer')}</legend>
      <QuantityDial
        label={t('try.roomLow')}
        kind="temperature"
        value={low}
        min={-5}
        max={35}
        step={0.5}
        onChange={(value) => {
          if (value !== null) answer({ [lowKey]: value, [highKey]: Math.max(value, high) }, lowKey);
        }}
      />
      <QuantityDial
        label={t('try.roomHigh')}
        kind="temperature"
        value={high}
        min={5}
        max={45}
        step={0.5}
        onChange={(value) => {
          if (value !== null) answer({ [highKey]: value, [lowKey]: Math.min(value, low) }, highKey);
        }}
      />
      <QuantityDial
        label={t('try.roomRh')}
        kind="percent"
        value={season === 'winter' ? rhPct : (document.answers.summerRhPct ?? rhPct)}
        min={10}
        max={90}
        step={1}
        digits={0}
        onChange={(value) => {
          if (value === null) return;
          if (season === 'winter') answer({ rhPct: value, rhMeasured: true }, 'rh');
          else answer({ summerRhPct: value }, 'rh-summer');
        }}
      />
      {usualRoomOf(document.answers) !== null && <p className="field-hint">{t('usualRoom.onPlan')}</p>}
    </fieldset>
  );
}

/** Largest power offered on the slider [W]: the next round figure above twice what is there (our choice). */
function mostPowerW(heater: Heater): number {
  return heater.powerW <= 30 ? 60 : 300;
}

export function HeaterControls({ enclosure }: { readonly enclosure: Enclosure }) {
  const { t } = useSheet();
  const { changeEnclosure } = useDocument();
  const several = enclosure.heaters.length > 1;
  return enclosure.heaters.map((heater, index) => (
    <fieldset key={heater.id} className="try-group">
      <legend>
        {t(`heater.${heater.kind}`)}
        {several && ` ${index + 1}`}
      </legend>
      <QuantityDial
        label={t('try.power')}
        hint={t('try.powerHint')}
        kind="power"
        value={heater.powerW}
        min={5}
        max={mostPowerW(heater)}
        step={5}
        digits={0}
        onChange={(value) => {
          if (value === null) return;
          changeEnclosure(
            (now) => ({
              ...now,
              heaters: now.heaters.map((row, at) => (at === index ? { ...row, powerW: value } : row)),
            }),
            `power-${index}`,
          );
        }}
      />
      <div className="field-row">
        <QuantityField
          compact
          label={t('try.heaterX')}
          kind="length"
          value={heater.xM}
          min={0}
          max={enclosure.box.lengthM}
          onChange={(value) => {
            if (value !== null) changeEnclosure((now) => movedHeater(now, index, { xM: value }), `heater-x-${index}`);
          }}
        />
        {heaterHasHeight(heater) && (
          <QuantityField
            compact
            label={t('try.heaterZ')}
            kind="length"
            value={heater.zM}
            min={0}
            max={enclosure.box.heightM}
            onChange={(value) => {
              if (value !== null) changeEnclosure((now) => movedHeater(now, index, { zM: value }), `heater-z-${index}`);
            }}
          />
        )}
      </div>
      <HeaterCaution heater={heater} />
    </fieldset>
  ));
}

function HeaterCaution({ heater }: { readonly heater: Heater }) {
  const { t } = useSheet();
  return (
    <div className="caution caution-small">
      <p>{t(heater.guarded || heater.kind === 'heat-mat' ? 'caution.heater' : 'caution.unguarded')}</p>
      <p>{t('caution.electric')}</p>
    </div>
  );
}

export function ThermostatControls({ enclosure }: { readonly enclosure: Enclosure }) {
  const { t } = useSheet();
  const { changeEnclosure } = useDocument();
  const several = enclosure.thermostats.length > 1;
  const put = (index: number, part: Partial<Thermostat>, gesture: string) =>
    changeEnclosure(
      (now) => ({
        ...now,
        thermostats: now.thermostats.map((row, at) => (at === index ? { ...row, ...part } : row)),
      }),
      `${gesture}-${index}`,
    );
  return enclosure.thermostats.map((thermostat, index) => {
    const { probe } = thermostat;
    const flat = probe.at === 'floor' || probe.at === 'mat';
    return (
      <fieldset key={thermostat.id} className="try-group">
        <legend>
          {t(`control.${thermostat.control}`)}
          {several && ` ${index + 1}`}
        </legend>
        <QuantityDial
          label={t('try.setDay')}
          hint={t('try.setDayHint')}
          kind="temperature"
          value={thermostat.setDayC}
          min={15}
          max={40}
          step={0.5}
          onChange={(value) => {
            if (value !== null) put(index, { setDayC: value }, 'set-day');
          }}
        />
        <QuantityDial
          label={t('try.setNight')}
          hint={t('try.setNightHint')}
          kind="temperature"
          value={thermostat.setNightC}
          min={10}
          max={38}
          step={0.5}
          onChange={(value) => {
            if (value !== null) put(index, { setNightC: value }, 'set-night');
          }}
        />
        <div className="field-row">
          <QuantityField
            compact
            label={t('try.probeX')}
            kind="length"
            value={probe.xM}
            min={0}
            max={enclosure.box.lengthM}
            onChange={(value) => {
              if (value !== null) changeEnclosure((now) => movedProbe(now, index, { xM: value }), `probe-x-${index}`);
            }}
          />
          {!flat && (
            <QuantityField
              compact
              label={t('try.probeZ')}
              kind="length"
              value={probe.zM}
              min={0}
              max={enclosure.box.heightM}
              onChange={(value) => {
                if (value !== null) changeEnclosure((now) => movedProbe(now, index, { zM: value }), `probe-z-${index}`);
              }}
            />
          )}
        </div>
        <p className="field-hint">{t('try.probeHint')}</p>
      </fieldset>
    );
  });
}
