import './older-browsers.ts';
import '@fontsource-variable/archivo/standard.css';
import './look/tokens.css';
import './look/base.css';
import './look/frame.css';
import './bench/bench.css';
import './measure/measure.css';
import './print/print.css';
import './scrape/scrape.css';
import './ledger/ledger.css';
import './look/paper.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { keepPlace } from './frame/keep-place.ts';
import { queries, startDelivery } from './keep/jobs.ts';
import { showSettings } from './keep/settings.ts';

showSettings();
startDelivery();
// Browsers keep a page only for this machine's own address and for enciphered ones; elsewhere the page says so (Share).
if (import.meta.env.PROD && 'serviceWorker' in navigator)
  navigator.serviceWorker.register('/shell-worker.js').catch(() => undefined);
const page = document.getElementById('bench')!;
keepPlace(page);
createRoot(page).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
