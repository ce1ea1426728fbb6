// Keeps the built page on this device, so that it opens while the shop is out of reach. It keeps files of this build and nothing
// else: no answer of the shop (/api) is ever kept here, nor answered from here. The build writes in the two constants.
const version = '__VERSION__';
const files = ['__FILES__'];
const name = `waywright-shell-${version}`;
/** A shop that does not answer within this time, ms, is out of reach for the page; what is asked of it goes on waiting by itself. */
const patience_ms = 4_000;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(name)
      .then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: 'reload' })))),
  );
});

self.addEventListener('activate', (event) => {
  // Runs when no page of the version before is open any more.
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((one) => one.startsWith('waywright-shell-') && one !== name)
            .map((one) => caches.delete(one)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

async function kept(file) {
  const cache = await caches.open(name);
  return cache.match(file);
}

/** The page itself comes from the shop when that answers, so that a new version is seen at once. */
async function page(request) {
  // AbortSignal.timeout would be shorter; phones of 2021 do not know it.
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), patience_ms);
  try {
    return await fetch(request, { signal: patience.signal });
  } catch (failure) {
    const shell = await kept('/');
    if (shell) return shell;
    throw failure;
  } finally {
    clearTimeout(timer);
  }
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(page(request));
  else if (files.includes(pathname))
    event.respondWith(kept(pathname).then((found) => found ?? fetch(request)));
});
