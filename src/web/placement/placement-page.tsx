// One placement on one sheet: what is missing next, the home drawn, the thread, the decision, every requirement.

import { NotReached } from '../animal/not-reached.tsx';
import { useSpecies } from '../animal/use-species.ts';
import { useHomeTitle } from '../controls/home-title.ts';
import { DrawingPatterns } from '../pictures/drawing-patterns.tsx';
import { SectionDrawing } from '../pictures/section-drawing.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { AftercareNote } from '../today/aftercare-note.tsx';
import { BuyerPart } from './buyer-part.tsx';
import { DecisionPart } from './decision-part.tsx';
import { HistoryPart } from './history-part.tsx';
import { NextLine } from './next-line.tsx';
import { PackPart } from './pack-part.tsx';
import type { PlacementSheet } from './placement-api.ts';
import { StateMark } from './placement-mark.tsx';
import { RequirementsPart } from './requirements-part.tsx';
import { ThreadPart } from './thread-part.tsx';
import { type PlacementOnDevice, usePlacement } from './use-placement.ts';

export interface PartProps {
  readonly sheet: PlacementSheet;
  readonly on: PlacementOnDevice;
}

export function PlacementPage({ id }: { readonly id: string }) {
  const on = usePlacement(id);
  if (on.sheet === null) return <NotReached failed={on.failed} again={on.again} />;
  return <Sheet sheet={on.sheet} on={on} />;
}

function Sheet({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const { nameOf } = useSpecies();
  const [ref, width] = useWidth<HTMLDivElement>(700);
  const name = sheet.animal.callName || sheet.animal.id.slice(0, 8);
  const homeTitle = useHomeTitle();
  const title = t('placement.title', { name });
  return (
    <>
      <NextLine sheet={sheet} on={on} />
      <main className="board board-headed placement">
        <DrawingPatterns />
        <div className="sheet-head board-head">
          <StateMark state={sheet.state} />
          <h1>{title}</h1>
          <p className="lead">
            {nameOf(sheet.animal.speciesId)} · {homeTitle(sheet.enquiry.title)}
          </p>
        </div>
        <div className="board-drawing" ref={ref}>
          {sheet.enclosure && (
            <>
              <p id="placement-drawing" className="visually-hidden">
                {sheet.enclosure.name}
              </p>
              <SectionDrawing
                enclosure={sheet.enclosure}
                readings={null}
                climate={null}
                width={width}
                mostInsideHeight={210}
                describedBy="placement-drawing"
                moves={null}
              />
            </>
          )}
          <ThreadPart sheet={sheet} />
        </div>
        <div className="board-sheet">
          {sheet.state === 'released' && <AftercareNote id={sheet.id} />}
          <DecisionPart sheet={sheet} on={on} />
          <RequirementsPart sheet={sheet} on={on} />
          <PackPart sheet={sheet} />
          <HistoryPart sheet={sheet} />
          <BuyerPart sheet={sheet} on={on} />
        </div>
      </main>
    </>
  );
}
