'use strict';

// A page that is in sight asks for its own address again now and then, and shows what changed. It asks, and keeps no
// line open: that gets through every proxy. Its texts come with it, in data attributes.
const live = document.getElementById('live');
if (live) {
  const LONGEST = 5 * 60_000;
  const GIVEN_UP_AFTER = 20_000;
  const NOT_TWICE_WITHIN = 3_000;
  const every = Number(live.dataset.every);
  const madeAt = document.querySelector('[data-made-at]');
  const clock = new Intl.DateTimeFormat(document.documentElement.lang, { timeZone: live.dataset.zone, hour: '2-digit', minute: '2-digit' });
  const pages = new DOMParser();

  let shown = live.dataset.fingerprint;
  let heldBack = null; // the fingerprint of a newer page, if a form that somebody fills keeps it from being shown
  let pause = every;
  let asked = Date.now();
  let answered = Date.parse(madeAt.dateTime); // by the server's clock
  let ahead = answered - Date.now(); // how far the server's clock is ahead of this machine's
  let asking = null;
  let due;

  const say = (state, text = '', link = '', address = '') => {
    document.body.dataset.live = state;
    if (live.textContent === text + link) return;
    live.replaceChildren();
    if (!text) return;
    const words = document.createElement('span');
    words.textContent = text;
    live.append(words);
    if (link) {
      const anchor = document.createElement('a');
      anchor.href = address;
      anchor.textContent = link;
      live.append(anchor);
    }
  };
  const since = (text) => text.replace('{0}', clock.format(answered));
  const here = () => location.pathname + location.search;
  const filled = () => [...document.querySelectorAll('main form[method=post]')].some(morph.isFilled);

  function plan() {
    clearTimeout(due);
    // Not all pages at once, as they would after the portal was away.
    if (!document.hidden) due = setTimeout(ask, pause * (0.8 + 0.4 * Math.random()));
  }

  async function ask() {
    clearTimeout(due);
    if (asking || document.hidden) return;
    asked = Date.now();
    asking = new AbortController();
    const overdue = setTimeout(() => asking.abort(), GIVEN_UP_AFTER);
    const address = here();
    try {
      const answer = await fetch(address, {
        headers: {
          Accept: 'text/html',
          'Rollbook-Refresh': live.dataset.kind,
          'If-None-Match': filled() ? (heldBack ?? shown) : shown,
        },
        cache: 'no-store',
        signal: asking.signal,
      });
      const page = answer.status === 200 ? pages.parseFromString(await answer.text(), 'text/html') : null;
      if (page) await withParts(page);
      if (address === here()) take(answer, page);
    } catch {
      late();
    }
    clearTimeout(overdue);
    asking = null;
    goOnCounting();
    plan();
  }

  function take(answer, page) {
    const strip = page?.getElementById('live');
    if (answer.status === 304 || (strip && !answer.redirected)) {
      current(answer);
      if (strip && strip.dataset.fingerprint !== shown) return show(page, strip.dataset.fingerprint);
      return heldBack ? say('changed', live.dataset.changed) : say('current');
    }
    // The figures in the address are wrong, and the page says so: that stays.
    if (answer.status === 422) {
      current(answer);
      return say('current');
    }
    if (answer.status === 401) return say('out', since(live.dataset.out), live.dataset.signIn, location.href);
    if (answer.redirected || /^4(?!08|29)/.test(answer.status)) {
      return say('gone', since(live.dataset.gone), live.dataset.reload, location.href);
    }
    late();
  }

  function current(answer) {
    pause = every;
    answered = Date.parse(answer.headers.get('Date')) || Date.now() + ahead;
    ahead = answered - Date.now();
    madeAt.dateTime = new Date(answered).toISOString();
    madeAt.textContent = clock.format(answered);
    if (!filled()) heldBack = null;
  }

  function late() {
    pause = document.body.dataset.live === 'late' ? Math.min(LONGEST, pause * 2) : every;
    say('late', since(navigator.onLine ? live.dataset.late : live.dataset.offline));
  }

  function show(page, fingerprint) {
    if (assets(page) !== assets(document)) {
      if (live.dataset.kind === 'wall') location.reload();
      else say('renewed', live.dataset.renewed, live.dataset.reload, location.href);
      return;
    }
    const main = document.getElementById('main');
    if (main.querySelector('.htmx-request, [aria-busy=true]')) return say('current');
    if (filled()) {
      heldBack = fingerprint;
      say('changed', live.dataset.changed);
      return;
    }
    shown = fingerprint;
    say('current');
    const sentence = document.getElementById('sentence')?.textContent;
    // What was just done stays to be read: only the first answer after it says so.
    const flash = page.getElementById('flash');
    if (flash && !flash.childElementCount) flash.replaceChildren(...[...document.getElementById('flash').children].map((said) => said.cloneNode(true)));
    document.title = page.title;
    const printed = document.querySelector('.printed');
    if (printed) printed.textContent = page.querySelector('.printed').textContent;
    morph(main, page.getElementById('main'));
    const fresh = document.getElementById('sentence')?.textContent;
    if (fresh && fresh !== sentence) document.getElementById('live-says').textContent = fresh;
    window.htmx?.process(main);
    document.dispatchEvent(new Event('refreshed'));
  }

  const assets = (page) => [...page.querySelectorAll('link[rel=stylesheet], script[src]')].map((asset) => asset.getAttribute('href') ?? asset.getAttribute('src')).join(' ');

  // What the page fetches by itself once it is open stands in this one already: its newer version has it too.
  async function withParts(page) {
    for (const part of page.querySelectorAll('main [hx-get][hx-select][hx-trigger=load]')) {
      if (!document.querySelector(part.getAttribute('hx-select'))) continue;
      const answer = await fetch(part.getAttribute('hx-get'), {
        headers: { 'Rollbook-Refresh': live.dataset.kind },
        cache: 'no-store',
        signal: asking.signal,
      });
      const whole = pages.parseFromString(await answer.text(), 'text/html');
      const its = whole.querySelector(part.getAttribute('hx-select'));
      if (its) part.replaceWith(page.importNode(its, true));
    }
  }

  // “12 min ago” goes on; what is older than a day the server says anew.
  function goOnCounting() {
    for (const span of document.querySelectorAll('main [data-ago]')) {
      const seconds = (Date.now() + ahead - Date.parse(span.closest('time').dateTime)) / 1000;
      const length = Math.abs(seconds);
      if (!(length < 86_400)) continue;
      const { now, minutes, hours, ago, ahead: toCome } = live.dataset;
      const largest = length < 3600 ? minutes.replace('{0}', Math.floor(length / 60)) : hours.replace('{0}', Math.floor(length / 3600));
      const text = length < 60 ? now : (seconds < 0 ? toCome : ago).replace('{0}', largest);
      if (span.textContent !== text) span.textContent = text;
    }
  }

  const atOnce = () => {
    if (document.hidden) return clearTimeout(due);
    goOnCounting();
    if (Date.now() - asked > Math.min(NOT_TWICE_WITHIN, every)) ask();
    else if (!asking) plan();
  };
  document.addEventListener('visibilitychange', atOnce);
  window.addEventListener('pageshow', (event) => event.persisted && atOnce());
  window.addEventListener('online', () => {
    pause = every;
    ask();
  });
  window.addEventListener('offline', () => say('late', since(live.dataset.offline)));
  plan();
}
