// The sheet that stands before the shop's sheets: a closed vivarium, drawn, and beside it what has to be done to get in.
import type { ReactNode } from 'react';
import { useSheet } from '../settings/settings-context.tsx';
import { ViewMenu } from '../shell/view-menu.tsx';

export function DoorFrame({
  title,
  lead,
  children,
}: {
  readonly title: string;
  readonly lead: string;
  readonly children: ReactNode;
}) {
  const { t } = useSheet();
  return (
    <div className="door">
      <header className="door-top">
        <span className="wordmark">{t('app.name')}</span>
        <ViewMenu />
      </header>
      <main className="door-sheet">
        <ClosedBox />
        <div className="door-form">
          <h1>{title}</h1>
          <p className="lead">{lead}</p>
          {children}
        </div>
      </main>
    </div>
  );
}

/** Front view: two sliding panes, a lock, vents; nothing of any real home. */
function ClosedBox() {
  const vents = [0, 1, 2, 3, 4, 5];
  return (
    <svg className="door-drawing" viewBox="0 0 420 260" aria-hidden="true">
      <rect x="20" y="30" width="380" height="190" className="door-outer" />
      <rect x="32" y="62" width="356" height="132" className="door-inner" />
      <rect x="36" y="66" width="180" height="124" className="door-pane" />
      <rect x="204" y="66" width="180" height="124" className="door-pane" />
      <path d="M60 178 112 84M76 178 128 84M236 178 288 84M252 178 304 84" className="door-glint" />
      {vents.map((n) => (
        <rect key={n} x={60 + n * 12} y="42" width="7" height="8" className="door-vent" />
      ))}
      {vents.map((n) => (
        <rect key={n} x={294 + n * 12} y="204" width="7" height="8" className="door-vent" />
      ))}
      <rect x="198" y="118" width="24" height="20" rx="2" className="door-lock" />
      <path d="M203 118v-6a7 7 0 0 1 14 0v6" className="door-shackle" />
      <path d="M20 240H400M20 234v12M400 234v12" className="door-dimension" />
    </svg>
  );
}
