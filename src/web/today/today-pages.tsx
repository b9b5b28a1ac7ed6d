// Which sheet the address names: what is due today, what follows one placement, own figures, the shop's instruments.
import '../animal/animal.css';
import './today.css';
import { AftercarePage } from './aftercare-page.tsx';
import { InstrumentsPage } from './instruments-page.tsx';
import { OwnFiguresPage } from './own-figures-page.tsx';
import { TodayPage } from './today-page.tsx';

export function TodayPages({ path }: { readonly path: string }) {
  const aftercare = /^\/aftercare\/([0-9a-f-]{36})\/?$/.exec(path)?.[1];
  if (aftercare) return <AftercarePage key={aftercare} id={aftercare} />;
  if (path.startsWith('/own-figures')) return <OwnFiguresPage />;
  if (path.startsWith('/instruments')) return <InstrumentsPage />;
  return <TodayPage />;
}
