// A link to another sheet of the program that does not load the page anew.
import type { ReactNode } from 'react';
import { go } from '../shell/router.ts';

interface SheetLinkProps {
  readonly path: string;
  readonly className?: string;
  readonly children: ReactNode;
}

export function SheetLink({ path, className, children }: SheetLinkProps) {
  return (
    <a
      href={path}
      className={className}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey) return;
        event.preventDefault();
        go(path);
      }}
    >
      {children}
    </a>
  );
}
