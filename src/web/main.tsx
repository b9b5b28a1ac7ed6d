// Starts the sheet in the page.
import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import './styles/tokens.css';
import './styles/sheet.css';
import './styles/controls.css';
import './styles/pictures.css';
import './styles/pages.css';
import './styles/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { loadBook } from './messages/translate.ts';
import { loadSettings } from './settings/settings.ts';
import { App } from './shell/app.tsx';
import { routeFrom } from './shell/router.ts';

// who opens the sheet of choosing at once finds its workers loading beside the page
if (routeFrom(window.location.pathname).page === 'choose')
  import('./choose/choose-workers.ts').then(({ readySearchWorkers }) => readySearchWorkers());
await loadBook(loadSettings().book);
const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
