// The thin line on top: what is missing next, undo and redo, whether it is kept, and how this person likes the sheet.
import { memo, useEffect } from 'react';
import { Button } from 'react-aria-components';
import { readEnquiry } from '../api/client.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { firstOpenQuestion } from '../state/document.ts';
import { useDocumentActions, useDocumentPart, useDocumentStore } from '../state/document-context.tsx';
import { markOf } from '../state/document-mark.ts';
import { isStarted } from '../state/document-store.ts';
import { isPlanDocument, withEveryAnswer } from '../state/draft-storage.ts';
import type { Keeping } from '../state/use-saving.ts';
import { usePlanMissing } from './plan-missing.ts';
import { go } from './router.ts';
import { ViewMenu } from './view-menu.tsx';

interface TopLineProps {
  readonly page: 'enquiry' | 'plan' | 'choose';
  readonly keeping: Keeping;
}

export function TopLine({ page, keeping }: TopLineProps) {
  const { t } = useSheet();
  const { undo, redo } = useDocumentActions();
  const canUndo = useDocumentPart((state) => state.canUndo);
  const canRedo = useDocumentPart((state) => state.canRedo);
  const planMissing = usePlanMissing();
  const open = useDocumentPart(({ document }) => firstOpenQuestion(document));
  let next = open ? t(`missing.${open}`) : t('missing.plan');
  if (page === 'plan' && !open) next = planMissing ?? t('missing.working');
  if (page === 'choose' && !open) next = t('missing.kit');
  useUndoKeys(undo, redo);
  return (
    <header className="top-line">
      <a
        className="wordmark"
        href="/"
        onClick={(event) => {
          event.preventDefault();
          go('/');
        }}
      >
        {t('app.name')}
      </a>
      <p className="missing" aria-live="polite">
        <span className="missing-label">{t('missing.label')}</span> <span className="missing-next">{next}</span>
      </p>
      <KeepNote keeping={keeping} />
      <div className="top-tools">
        <Button className="tool" isDisabled={!canUndo} onPress={undo} aria-label={t('tool.undo')}>
          <ToolShape path="M4 8h9a4.5 4.5 0 0 1 0 9H8M4 8l4-4M4 8l4 4" />
        </Button>
        <Button className="tool" isDisabled={!canRedo} onPress={redo} aria-label={t('tool.redo')}>
          <ToolShape path="M18 8H9a4.5 4.5 0 0 0 0 9h5M18 8l-4-4M18 8l-4 4" />
        </Button>
        <ViewMenu />
      </div>
    </header>
  );
}

export function ToolShape({ path }: { readonly path: string }) {
  return (
    <svg viewBox="0 0 22 22" aria-hidden="true" className="tool-shape">
      <path d={path} />
    </svg>
  );
}

const KeepNote = memo(function KeepNote({ keeping }: { readonly keeping: Keeping }) {
  const { t } = useSheet();
  const store = useDocumentStore();
  const started = useDocumentPart(isStarted);
  const openTheirs = async () => {
    const { savedAs } = store.state();
    if (!savedAs) return;
    const answer = await readEnquiry(savedAs.id);
    if (!answer.ok || !isPlanDocument(answer.value.document)) return;
    const theirs = withEveryAnswer(answer.value.document);
    store.actions.open(theirs, { id: savedAs.id, version: answer.value.version, mark: markOf(theirs) });
  };
  return (
    <div className={`keep keep-${keeping.saving}`} role="status">
      <span className="keep-text">{t(`keep.${keeping.saving}`)}</span>
      {keeping.saving === 'device-only' && started && (
        <Button className="quiet-button" onPress={keeping.keep}>
          {t('keep.now')}
        </Button>
      )}
      {keeping.saving === 'changed-elsewhere' && (
        <>
          <Button className="quiet-button" onPress={() => void openTheirs()}>
            {t('keep.openTheirs')}
          </Button>
          <Button className="quiet-button" onPress={keeping.keepAsNew}>
            {t('keep.asNew')}
          </Button>
        </>
      )}
    </div>
  );
});

/** Ctrl or Cmd with Z and Shift+Z or Y, except while typing, where the field has its own. */
function useUndoKeys(undo: () => void, redo: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (event.target instanceof HTMLInputElement && event.target.type === 'text') return;
      const key = event.key.toLowerCase();
      const forward = key === 'y' || (key === 'z' && event.shiftKey);
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (forward) redo();
      else undo();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [undo, redo]);
}
