// The questions of an enquiry about the room and the box it starts from.
import { Choice } from '../controls/choice.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { Tick } from '../controls/tick.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { type Answers, type Sun, spanInOrder, sunDays, usualRhPct } from '../state/document.ts';
import { useAnswer, useDocumentActions, useDocumentPart } from '../state/document-context.tsx';
import { boxName } from './box-name.ts';
import { ExampleThumbnail } from './example-thumbnail.tsx';
import { examples } from './examples.ts';
import { usualRoomOf, usualRooms } from './usual-rooms.ts';

/** Rooms that people live in [°C]; the enclosure file allows more (our choice for the form). */
const roomC = { min: -10, max: 45 };

/** Humidities that a room for people has [%] (our choice for the form). */
const rhRange = { min: 5, max: 95 };

type SpanKey = 'winterLowC' | 'winterHighC' | 'summerLowC' | 'summerHighC';

export function SeasonQuestion({ season }: { readonly season: 'winter' | 'summer' }) {
  const { t } = useSheet();
  const { answer } = useDocumentActions();
  const lowKey: SpanKey = season === 'winter' ? 'winterLowC' : 'summerLowC';
  const highKey: SpanKey = season === 'winter' ? 'winterHighC' : 'summerHighC';
  const low = useAnswer(lowKey);
  const high = useAnswer(highKey);
  const crossed = low !== null && high !== null && !spanInOrder(low, high);
  const put = (key: SpanKey) => (value: number | null) => answer({ [key]: value } as Partial<Answers>, key);
  const fields = (
    <div className="field-row">
      <QuantityField
        label={t(season === 'winter' ? 'winter.low' : 'summer.low')}
        kind="temperature"
        value={low}
        onChange={put(lowKey)}
        {...roomC}
        fault={crossed ? t('room.crossed') : null}
      />
      <QuantityField
        label={t(season === 'winter' ? 'winter.high' : 'summer.high')}
        kind="temperature"
        value={high}
        onChange={put(highKey)}
        {...roomC}
      />
    </div>
  );
  if (season === 'summer') return fields;
  return (
    <>
      {fields}
      <UsualRoomChoice />
    </>
  );
}

/** One touch for a customer who has never read the room: usual figures, said to be that. */
function UsualRoomChoice() {
  const { t, measure } = useSheet();
  const { answer } = useDocumentActions();
  const usual = useDocumentPart(({ document }) => usualRoomOf(document.answers));
  return (
    <Choice
      label={t('usualRoom.label')}
      layout="list"
      value={usual}
      onChange={(id) => {
        const room = usualRooms.find((row) => row.id === id);
        if (room) answer(room.answers);
      }}
      options={usualRooms.map(({ id, answers }) => ({
        value: id,
        text: t(`usualRoom.${id}`),
        more: t('usualRoom.means', {
          winter: measure.text('temperature', answers.winterLowC ?? Number.NaN, 0),
          summer: measure.text('temperature', answers.summerHighC ?? Number.NaN, 0),
        }),
      }))}
      hint={t('usualRoom.hint')}
    />
  );
}

export function HumidityQuestion() {
  const { t, measure } = useSheet();
  const { answer } = useDocumentActions();
  const rhPct = useAnswer('rhPct');
  const rhMeasured = useAnswer('rhMeasured');
  const summerRhPct = useAnswer('summerRhPct');
  const unmeasured = rhPct !== null && !rhMeasured;
  return (
    <>
      <div className="field-row">
        <QuantityField
          label={t('humidity.rh')}
          kind="percent"
          value={rhPct}
          onChange={(value) => answer({ rhPct: value, rhMeasured: true }, 'rh')}
          {...rhRange}
          digits={0}
          isDisabled={unmeasured}
        />
        <QuantityField
          label={t('humidity.summer')}
          kind="percent"
          value={summerRhPct}
          onChange={(value) => answer({ summerRhPct: value }, 'rh-summer')}
          {...rhRange}
          digits={0}
          hint={t('humidity.summerHint')}
        />
      </div>
      <Tick
        isSelected={unmeasured}
        onChange={(value) =>
          answer(value ? { rhPct: usualRhPct, rhMeasured: false } : { rhPct: null, rhMeasured: true })
        }
      >
        {t('humidity.notMeasured', { value: measure.text('percent', usualRhPct) })}
      </Tick>
    </>
  );
}

const suns: readonly Sun[] = ['none', 'some', 'hours'];

export function SunQuestion() {
  const { t, measure } = useSheet();
  const { answer } = useDocumentActions();
  const sun = useAnswer('sun');
  return (
    <Choice
      label={t('sun.label')}
      hideLabel
      layout="list"
      value={sun}
      onChange={(value) => answer({ sun: value })}
      options={suns.map((value) => {
        const { sunPeakWPerM2, sunFromH = 0, sunToH = 0 } = sunDays[value];
        const more = t('sun.means', {
          watts: measure.number(sunPeakWPerM2, 0),
          from: measure.clock(sunFromH),
          to: measure.clock(sunToH),
        });
        return { value, text: t(`sun.${value}`), ...(sunPeakWPerM2 > 0 ? { more } : {}) };
      })}
      hint={t('sun.hint')}
    />
  );
}

export function BoxQuestion() {
  const { t, measure } = useSheet();
  const { change } = useDocumentActions();
  const startFrom = useAnswer('startFrom');
  return (
    <Choice
      label={t('box.label')}
      hideLabel
      layout="list"
      value={startFrom}
      onChange={(id) => {
        const example = examples.find((row) => row.id === id);
        if (!example) return;
        change((now) => ({
          ...now,
          answers: { ...now.answers, startFrom: id },
          enclosure: example.enclosure,
        }));
      }}
      options={examples.map(({ id, enclosure }) => {
        const { box, heaters } = enclosure;
        const size = [box.lengthM, box.depthM, box.heightM].map((m) => measure.write('length', m).num).join(' × ');
        const kit = heaters.map((heater) => `${t(`heater.${heater.kind}`)} ${measure.text('power', heater.powerW)}`);
        return {
          value: id,
          text: boxName(id, t),
          more: `${size} ${measure.settings.length} · ${kit.join(', ')}`,
          picture: <ExampleThumbnail enclosure={enclosure} />,
        };
      })}
      hint={t('box.hint')}
    />
  );
}
