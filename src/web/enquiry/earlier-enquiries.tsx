// Enquiries put down before, to go on with one after an interruption.

import { memo, useEffect, useState } from 'react';
import { type EnquiryStamp, listEnquiries } from '../api/client.ts';
import { useHomeTitle } from '../controls/home-title.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { useDocumentPart } from '../state/document-context.tsx';

export const EarlierEnquiries = memo(function EarlierEnquiries() {
  const { t, measure } = useSheet();
  const savedId = useDocumentPart((state) => state.savedAs?.id ?? null);
  const [rows, setRows] = useState<readonly EnquiryStamp[]>([]);
  useEffect(() => {
    let wanted = true;
    void listEnquiries().then((answer) => {
      if (wanted && answer.ok) setRows(answer.value.enquiries);
    });
    return () => {
      wanted = false;
    };
  }, []);
  const homeTitle = useHomeTitle();
  const earlier = rows.filter((row) => row.id !== savedId).slice(0, 8);
  if (earlier.length === 0) return null;
  const date = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium', timeStyle: 'short' });
  return (
    <section className="earlier" aria-labelledby="earlier-title">
      <h2 id="earlier-title">{t('earlier.title')}</h2>
      <ul>
        {earlier.map((row) => (
          <li key={row.id}>
            <a
              href={`/plan/${row.id}`}
              onClick={(event) => {
                event.preventDefault();
                go(`/plan/${row.id}`);
              }}
            >
              {homeTitle(row.title) || t('earlier.untitled')}
            </a>
            <time dateTime={row.updatedAt}>{date.format(new Date(row.updatedAt))}</time>
          </li>
        ))}
      </ul>
    </section>
  );
});
