// One row of the list: a mark and a word for how urgent it is, what is to be done, for whom; all of it one target.
import type { ReactNode } from 'react';
import { go } from '../shell/router.ts';

interface TodayRowProps {
  readonly mark: 'now' | 'overdue' | 'due' | 'open' | 'done';
  readonly word: string;
  readonly path: string;
  readonly what: string;
  readonly who: string;
  readonly when?: string;
  readonly children?: ReactNode;
}

export function TodayRow({ mark, word, path, what, who, when = '', children }: TodayRowProps) {
  return (
    <li className={`today-row today-${mark}`}>
      <a
        href={path}
        onClick={(event) => {
          event.preventDefault();
          go(path);
        }}
      >
        <span className="today-word">
          <span className="today-mark" aria-hidden="true" />
          {word}
        </span>
        <span className="today-what">{what}</span>
        <span className="today-who">{who}</span>
        <span className="today-when">{when}</span>
      </a>
      {children}
    </li>
  );
}
