// The whole program in the browser: settings, the document, the thin line on top and the sheet the address names.
import { lazy, Suspense, useEffect, useState } from 'react';
import { I18nProvider } from 'react-aria-components';
import { Gate } from '../account/gate.tsx';
import { useMe } from '../account/here.ts';
import { AnimalTopLine } from '../animal/animal-top-line.tsx';
import { inspectorSees, SheetLinks } from '../animal/sheet-links.tsx';
import { readEnquiry } from '../api/client.ts';
import { EnquiryPage } from '../enquiry/enquiry-page.tsx';
import { DrawingPatterns } from '../pictures/drawing-patterns.tsx';
import { SettingsProvider, useSheet } from '../settings/settings-context.tsx';
import { DocumentProvider, useDocumentActions, useDocumentPart, useDocumentStore } from '../state/document-context.tsx';
import { markOf } from '../state/document-mark.ts';
import { isPlanDocument, withEveryAnswer } from '../state/draft-storage.ts';
import { type Keeping, useSaving } from '../state/use-saving.ts';
import { Arrival } from './arrival.tsx';
import { ErrorEdge } from './error-edge.tsx';
import { go, type Route, routeFrom, usePath } from './router.ts';
import { TopLine } from './top-line.tsx';

const AccountPages = lazy(async () => ({ default: (await import('../account/account-pages.tsx')).AccountPages }));
const AnimalPages = lazy(async () => ({ default: (await import('../animal/animal-pages.tsx')).AnimalPages }));
const ReferencePages = lazy(async () => ({
  default: (await import('../reference/reference-pages.tsx')).ReferencePages,
}));
const ChoosePage = lazy(async () => ({ default: (await import('../choose/choose-page.tsx')).ChoosePage }));
const ProofPage = lazy(async () => ({ default: (await import('../proof/proof-page.tsx')).ProofPage }));
const TodayPages = lazy(async () => ({ default: (await import('../today/today-pages.tsx')).TodayPages }));
const KeeperPage = lazy(async () => ({ default: (await import('../keeper/keeper-page.tsx')).KeeperPage }));
const PlacementPages = lazy(async () => ({
  default: (await import('../placement/placement-pages.tsx')).PlacementPages,
}));
const ShelfPage = lazy(async () => ({ default: (await import('../shelf/shelf-page.tsx')).ShelfPage }));
const PlanPage = lazy(async () => ({ default: (await import('../plan/plan-page.tsx')).PlanPage }));

export function App() {
  return (
    <SettingsProvider>
      <DocumentProvider>
        <Localised />
      </DocumentProvider>
    </SettingsProvider>
  );
}

function Localised() {
  const { measure, t } = useSheet();
  const route = routeFrom(usePath());
  return (
    <I18nProvider locale={measure.locale}>
      <Arrival />
      <ErrorEdge title={t('app.broken')} say={t('app.brokenSay')} again={t('app.brokenAgain')}>
        {route.page === 'keeper' ? (
          <SheetOf route={route} />
        ) : (
          <Gate>
            <SheetOf route={route} />
          </Gate>
        )}
      </ErrorEdge>
    </I18nProvider>
  );
}

function SheetOf({ route }: { readonly route: Route }) {
  const { t } = useSheet();
  const me = useMe();
  const notForThem = me?.role === 'inspector' && route.page !== 'keeper' && !inspectorSees(location.pathname);
  useEffect(() => {
    if (notForThem) go('/register', true);
  }, [notForThem]);
  if (notForThem) return null;
  if ('path' in route) return <AnimalSheets route={route} />;
  if (route.page === 'keeper')
    return (
      <Suspense fallback={<main className="notice">{t('keeper.loading')}</main>}>
        <KeeperPage key={route.secret} secret={route.secret} />
      </Suspense>
    );
  if (route.page !== 'proof' && route.page !== 'placement') return <Sheets />;
  return (
    <>
      <AnimalTopLine />
      <Suspense fallback={<main className="notice">{t('proof.waiting')}</main>}>
        {route.page === 'proof' ? <ProofPage key={route.id} id={route.id} /> : <PlacementPages id={route.id} />}
      </Suspense>
      <footer className="colophon">{t('app.colophon')}</footer>
    </>
  );
}

function AnimalSheets({ route }: { readonly route: Extract<Route, { readonly path: string }> }) {
  const { t } = useSheet();
  return (
    <>
      <AnimalTopLine />
      <Suspense fallback={<main className="notice">{t('animals.waiting')}</main>}>
        {route.page === 'animal' && <AnimalPages path={route.path} />}
        {route.page === 'reference' && <ReferencePages path={route.path} />}
        {route.page === 'shelf' && <ShelfPage />}
        {route.page === 'today' && <TodayPages path={route.path} />}
        {route.page === 'account' && <AccountPages path={route.path} />}
      </Suspense>
      <footer className="colophon">{t('app.colophon')}</footer>
    </>
  );
}

function Sheets() {
  const { t } = useSheet();
  const route = routeFrom(usePath());
  const keeping = useSaving();
  const store = useDocumentStore();
  const savedId = useDocumentPart((state) => state.savedAs?.id ?? null);
  const complete = useDocumentPart((state) => state.enclosure !== null);
  const opening = useOpened(route.page === 'plan' || route.page === 'choose' ? route.id : null);
  const onPlan = route.page === 'plan' || route.page === 'choose';
  const planReady = onPlan && (complete || opening !== 'done');
  useEffect(() => {
    // A plan without its answers is the enquiry; a saved one carries its name in the address.
    if (onPlan && opening === 'done' && !complete) go('/', true);
    else if (route.page === 'plan' && !route.id && savedId) go(`/plan/${savedId}`, true);
  }, [route.page, route, onPlan, opening, complete, savedId]);

  return (
    <>
      <DrawingPatterns />
      <TopLine page={route.page === 'plan' || route.page === 'choose' ? route.page : 'enquiry'} keeping={keeping} />
      <div className="sheet-links-under">
        <SheetLinks />
      </div>
      {planReady ? (
        <PlanSheet opening={opening} choosing={route.page === 'choose'} />
      ) : (
        <EnquiryPage onPlan={() => showPlan(keeping, store.state().savedAs?.id)} />
      )}
      <footer className="colophon">{t('app.colophon')}</footer>
    </>
  );
}

function PlanSheet({ opening, choosing }: { readonly opening: Opening; readonly choosing: boolean }) {
  const { t } = useSheet();
  if (opening === 'missing') return <main className="notice">{t('open.missing')}</main>;
  if (opening === 'waiting') return <main className="notice">{t('open.waiting')}</main>;
  return (
    <Suspense fallback={<main className="notice">{t('open.waiting')}</main>}>
      {choosing ? <ChoosePage /> : <PlanPage />}
    </Suspense>
  );
}

function showPlan(keeping: Keeping, id: string | undefined): void {
  if (keeping.saving === 'device-only') keeping.keep();
  go(id ? `/plan/${id}` : '/plan');
}

type Opening = 'done' | 'waiting' | 'missing';

/** Opens the enquiry the address names, unless it is the one that stands here already. */
function useOpened(id: string | null): Opening {
  const { open } = useDocumentActions();
  const savedId = useDocumentPart((state) => state.savedAs?.id ?? null);
  const [missing, setMissing] = useState<string | null>(null);
  const wanted = id !== null && savedId !== id;
  useEffect(() => {
    if (!wanted || id === null) return;
    let current = true;
    void readEnquiry(id).then((answer) => {
      if (!current) return;
      if (answer.ok && isPlanDocument(answer.value.document)) {
        const document = withEveryAnswer(answer.value.document);
        open(document, { id, version: answer.value.version, mark: markOf(document) });
      } else setMissing(id);
    });
    return () => {
      current = false;
    };
  }, [wanted, id, open]);
  if (!wanted) return 'done';
  return missing === id ? 'missing' : 'waiting';
}
