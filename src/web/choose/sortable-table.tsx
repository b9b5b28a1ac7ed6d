// A table that is sorted by any column, with keys or touch; the order is told to screen readers.
import { type ReactNode, useMemo, useState } from 'react';
import { useSheet } from '../settings/settings-context.tsx';

export interface SortColumn<Row> {
  readonly key: string;
  readonly head: string;
  /** What is sorted by; null goes last. */
  readonly value: (row: Row) => number | string | null;
  readonly cell: (row: Row) => ReactNode;
  readonly numeric?: boolean;
}

interface SortableTableProps<Row> {
  readonly caption: string;
  readonly columns: readonly SortColumn<Row>[];
  readonly rows: readonly Row[];
  readonly idOf: (row: Row) => string;
  readonly first: string;
  readonly chosen?: string | null;
  readonly onChoose?: (id: string) => void;
}

export function SortableTable<Row>(props: SortableTableProps<Row>) {
  const { columns, rows, idOf, chosen, onChoose } = props;
  const { t } = useSheet();
  const [by, setBy] = useState({ key: props.first, up: true });
  const sorted = useMemo(() => {
    const column = columns.find((c) => c.key === by.key);
    if (!column) return rows;
    return [...rows].sort((a, b) => {
      const [x, y] = [column.value(a), column.value(b)];
      if (x === null || y === null) return x === y ? 0 : x === null ? 1 : -1;
      const order = typeof x === 'number' && typeof y === 'number' ? x - y : String(x).localeCompare(String(y));
      return by.up ? order : -order;
    });
  }, [rows, columns, by]);
  const turn = (key: string) => setBy((now) => ({ key, up: now.key === key ? !now.up : true }));
  return (
    <div className="sort-scroll">
      <table className="sort-table">
        <caption className="visually-hidden">{props.caption}</caption>
        <thead>
          <tr>
            {columns.map((c) => (
              <th key={c.key} scope="col" aria-sort={by.key === c.key ? (by.up ? 'ascending' : 'descending') : 'none'}>
                <button type="button" className="sort-head" onClick={() => turn(c.key)}>
                  {c.head}
                  <span aria-hidden="true" className="sort-arrow">
                    {by.key === c.key ? (by.up ? '▲' : '▼') : '△'}
                  </span>
                </button>
              </th>
            ))}
            {onChoose && (
              <th scope="col">
                <span className="visually-hidden">{t('choose.show')}</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {sorted.map((row) => (
            <tr key={idOf(row)} className={chosen === idOf(row) ? 'sort-chosen' : undefined}>
              {columns.map((c, i) =>
                i === 0 ? (
                  <th key={c.key} scope="row">
                    {c.cell(row)}
                  </th>
                ) : (
                  <td key={c.key} className={c.numeric ? 'sort-number' : undefined}>
                    <span className="sort-label">{c.head}</span>
                    <div>{c.cell(row)}</div>
                  </td>
                ),
              )}
              {onChoose && (
                <td>
                  <button
                    type="button"
                    className="sort-choose"
                    aria-label={`${t('choose.show')}: ${String(columns[0]?.value(row) ?? '')}`}
                    aria-pressed={chosen === idOf(row)}
                    onClick={() => onChoose(idOf(row))}
                  >
                    {t('choose.show')}
                  </button>
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
