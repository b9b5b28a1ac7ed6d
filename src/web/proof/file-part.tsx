// Logger files: drop one, see how it was understood, answer what it leaves open with one press, set it aside.
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { DateOrder } from '../../proving/files/stamp.ts';
import type { LogHints } from '../../proving/files/understood.ts';
import { type LogPlace, logPlaces } from '../../proving/reading-log.ts';
import type { Asked } from '../animal/animal-api.ts';
import { LongWork, useLongWork } from '../controls/long-work.tsx';
import { sentence } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { Faults } from './faults.tsx';
import {
  answerFile,
  type ShownFile,
  type ShownFiles,
  type ShownInstruments,
  sendFile,
  setFileAside,
  takeFileBack,
} from './proof-api.ts';
import { wallMoment } from './wall-words.ts';

interface FilePartProps {
  readonly enquiryId: string;
  readonly files: readonly ShownFile[];
  readonly aside: ShownFiles['aside'];
  readonly instruments: ShownInstruments['instruments'];
  readonly onChange: () => void;
}

export function FilePart({ enquiryId, files, aside, instruments, onChange }: FilePartProps) {
  const { t } = useSheet();
  const work = useLongWork<void>({ keeps: true });
  const working = work.sinceMs !== null;
  const [doneFrac, setDone] = useState(0);
  const [answer, setAnswer] = useState<Asked<ShownFile> | null>(null);
  const [over, setOver] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const send = async (list: FileList | null) => {
    const files = [...(list ?? [])];
    setAnswer(null);
    await work.run(async (part) => {
      for (const [i, file] of files.entries()) {
        setDone(i / files.length);
        const one = part();
        const sent = await sendFile(enquiryId, file, one);
        if (one.signal.aborted) break;
        setAnswer(sent);
        if (!sent.ok) break;
      }
    });
    onChange();
  };
  return (
    <section className="sheet-part" aria-labelledby="files-title">
      <h2 id="files-title">{t('proof.files')}</h2>
      <fieldset
        className={over ? 'drop drop-over' : 'drop'}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          void send(event.dataTransfer.files);
        }}
      >
        <legend className="visually-hidden">{t('proof.files')}</legend>
        <Button className="button" isDisabled={working} onPress={() => input.current?.click()}>
          {t('proof.pick')}
        </Button>
        <span>{t('proof.orDrop')}</span>
        <span className="field-hint">{t('proof.dropSay')}</span>
        <input
          ref={input}
          type="file"
          hidden
          aria-label={t('proof.pick')}
          multiple
          accept=".csv,.tsv,.txt,.log,text/*"
          onChange={async (event) => {
            const field = event.target;
            await send(field.files);
            // the same file may be chosen again once it was mended
            field.value = '';
          }}
        />
      </fieldset>
      <LongWork work={work} words={t('proof.reading')} {...(doneFrac > 0 ? { doneFrac } : {})} />
      <Faults answer={answer} />
      {files.map((file) => (
        <Understood key={file.id} enquiryId={enquiryId} file={file} instruments={instruments} onChange={onChange} />
      ))}
      {aside.map((file) => (
        <p key={file.id} className="field-hint">
          {t('proof.isAside', { name: file.name })}{' '}
          <Button
            className="quiet-button"
            onPress={() => {
              void takeFileBack(enquiryId, file.id).then(onChange);
            }}
          >
            {t('proof.takeFileBack')}
          </Button>
        </p>
      ))}
    </section>
  );
}

const cellSigns: Readonly<Record<string, string>> = { ',': '“,”', ';': '“;”', '\t': 'TAB', '|': '“|”' };

function Understood({
  enquiryId,
  file,
  instruments,
  onChange,
}: Omit<FilePartProps, 'files' | 'aside'> & { readonly file: ShownFile }) {
  const { t, measure } = useSheet();
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const u = file.understood;
  const say = async (hints: LogHints) => {
    setAnswer(await answerFile(enquiryId, file.id, hints));
    onChange();
  };
  const aside = Object.entries(u.rejectedByReason).filter(([reason]) => reason !== 'empty') as [
    Exclude<keyof typeof u.rejectedByReason, 'empty'>,
    number,
  ][];
  const asks = (id: string) => u.questions.find((q) => q.id === id);
  const order = asks('date-order');
  const swapped = asks('swapped');
  const placed = u.channels.filter((c) => c.quantity === 'tempC' && c.place !== null && c.place !== 'room');
  return (
    <div className="understood">
      <h3>{file.name}</h3>
      <p>
        {t('proof.understood', {
          rows: u.rowsRead,
          of: u.rowsInFile,
          minutes: measure.number(u.intervalS / 60, 0),
          from: wallMoment(measure.locale, u.fromS),
          to: wallMoment(measure.locale, u.toS),
        })}{' '}
        {t('proof.layout', {
          delimiter: cellSigns[u.delimiter] ?? u.delimiter,
          dates: t(`proof.order.${u.dateOrder}`),
          decimal: `“${u.decimal}”`,
          clock: sentence(u.clock.told, u.clock.say, measure).text,
        })}
      </p>
      {aside.length > 0 && (
        <p>
          {t('proof.aside', {
            count: aside.reduce((s, [, n]) => s + n, 0),
            reasons: aside.map(([reason, n]) => t(`proof.reject.${reason}`, { count: n })).join(', '),
          })}
        </p>
      )}
      {u.findings.map((f) => {
        const said = sentence(f.told, f.say, measure);
        return (
          <p key={f.say} lang={said.lang} className="understood-odd">
            {said.text}
          </p>
        );
      })}
      {u.channels.map((c) => (
        <div key={c.id} className="field-row">
          <label className="field-label">
            {t('proof.where', { label: c.label })}
            <select
              className="text-input"
              value={c.place ?? ''}
              onChange={(event) => void say({ places: { [c.id]: event.target.value as LogPlace } })}
            >
              {c.place === null && <option value="">{t('proof.choose')}</option>}
              {logPlaces.map((p) => (
                <option key={p} value={p}>
                  {t(`proof.place.${p}`)}
                </option>
              ))}
            </select>
          </label>
          {c.quantity !== 'powerW' && instruments.length > 0 && (
            <label className="field-label">
              {t('proof.instrument', { label: c.label })}
              <select
                className="text-input"
                value={c.instrumentId ?? ''}
                onChange={(event) => void say({ instruments: { [c.id]: event.target.value } })}
              >
                {c.instrumentId === null && <option value="">{t('proof.noInstrument')}</option>}
                {instruments.map((i) => (
                  <option key={i.id} value={i.id}>
                    {i.name}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
      ))}
      {order && (
        <label className="field-label">
          {t('proof.order')}
          <select
            className="text-input"
            value=""
            onChange={(event) => void say({ dateOrder: event.target.value as DateOrder })}
          >
            <option value="">{t('proof.choose')}</option>
            {order.choices.map((choice) => (
              <option key={choice} value={choice}>
                {t(`proof.order.${choice as DateOrder}`)}
              </option>
            ))}
          </select>
        </label>
      )}
      {asks('unit') && (
        <p className="understood-ask">
          {t('proof.unit')}{' '}
          {(['C', 'F'] as const).map((unit) => (
            <Button key={unit} className="button button-quiet" onPress={() => void say({ tempUnit: unit })}>
              °{unit}
            </Button>
          ))}
        </p>
      )}
      {asks('zone') && (
        <label className="field-label">
          {t('proof.clock')}
          <select
            className="text-input"
            aria-describedby="clock-hint"
            value=""
            onChange={(event) => void say({ homeOffsetMin: 60 * Number(event.target.value) })}
          >
            <option value="">{t('proof.choose')}</option>
            {Array.from({ length: 27 }, (_, i) => i - 12).map((h) => (
              <option key={h} value={h}>
                {h > 0 ? `+${h}` : h}
              </option>
            ))}
          </select>
        </label>
      )}
      {asks('zone') && (
        <span id="clock-hint" className="field-hint">
          {t('proof.clockHint')}
        </span>
      )}
      {swapped && placed.length === 2 && (
        <Button
          className="button"
          onPress={() =>
            void say({ places: { [placed[0]!.id]: placed[1]!.place!, [placed[1]!.id]: placed[0]!.place! } })
          }
        >
          {t('proof.swap')}
        </Button>
      )}
      <Faults answer={answer} />
      <Button
        className="quiet-button"
        onPress={() => {
          void setFileAside(enquiryId, file.id, 'set aside at the desk').then(onChange);
        }}
      >
        {t('proof.setAside')}
      </Button>
    </div>
  );
}
