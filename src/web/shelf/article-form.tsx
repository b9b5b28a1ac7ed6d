// One article of the shelf: every column that its kind has; kept, or taken off the shelf.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { ShelfItem } from '../../planning/shelf/shelf.ts';
import { fieldsOf } from '../../planning/shelf/shelf-fields.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { keepBegun } from '../state/begun.ts';
import { ArticleField } from './article-field.tsx';

export type ArticleDraft = Readonly<Record<string, unknown>> & Pick<ShelfItem, 'kind' | 'id'>;

interface ArticleFormProps {
  readonly draft: ArticleDraft;
  readonly isNew: boolean;
  readonly currency: string;
  readonly materials: readonly string[];
  readonly onKeep: (article: ArticleDraft) => void;
  readonly onRemove: () => void;
  readonly onClose: () => void;
}

/** Where an article that is half written waits on this device. */
export const articlePlace = 'article';

export interface BegunArticle {
  readonly article: ArticleDraft;
  readonly isNew: boolean;
}

const flat: readonly unknown[] = ['heat-mat', 'radiant-panel'];

export function ArticleForm(props: ArticleFormProps) {
  const { t } = useSheet();
  const [article, setArticle] = useState<ArticleDraft>(props.draft);
  const change = (next: ArticleDraft) => {
    setArticle(next);
    keepBegun(articlePlace, { article: next, isNew: props.isNew });
  };
  // lamps and emitters have no size; what was typed for a mat goes with it
  const sized = article.kind !== 'heater' || flat.includes(article.heaterKind);
  const fields = fieldsOf(article.kind).filter(
    (field) => field.key !== 'kind' && (sized || (field.key !== 'lengthM' && field.key !== 'depthM')),
  );
  return (
    <form
      className="sheet-part article-form"
      aria-labelledby="article-title"
      onSubmit={(event) => {
        event.preventDefault();
        props.onKeep(sized ? article : { ...article, lengthM: null, depthM: null });
      }}
    >
      <h2 id="article-title">
        {props.isNew ? t('shelf.new', { kind: t(`shelf.word.${article.kind}`) }) : String(article.name ?? '')}
      </h2>
      <div className="article-fields">
        {fields.map((field) => (
          <ArticleField
            key={field.key}
            field={field}
            value={article[field.key]}
            currency={props.currency}
            materials={props.materials}
            onChange={(value) => change({ ...article, [field.key]: value })}
          />
        ))}
      </div>
      <div className="field-row">
        <Button className="button" type="submit">
          {t('shelf.keep')}
        </Button>
        <Button className="button button-quiet" onPress={props.onClose}>
          {t('shelf.close')}
        </Button>
        {!props.isNew && (
          <Button className="button button-quiet" onPress={props.onRemove}>
            {t('shelf.remove')}
          </Button>
        )}
      </div>
    </form>
  );
}
