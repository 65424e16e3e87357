'use strict';

// A login that has run out answers with the sign-in page: show it whole, not inside a part of this one.
document.addEventListener('htmx:beforeSwap', (event) => {
  const answer = new URL(event.detail.xhr.responseURL || location.href, location.href);
  if (answer.pathname.endsWith('/sign-in') && location.pathname !== answer.pathname) {
    event.detail.shouldSwap = false;
    location.assign(answer);
  }
});

// A request from outside a form takes the token that the page's forms carry.
document.addEventListener('htmx:configRequest', (event) => {
  const token = document.querySelector('input[name=_csrf]');
  if (event.detail.verb !== 'get' && token && !('_csrf' in event.detail.parameters)) {
    event.detail.parameters['_csrf'] = token.value;
  }
});

// What was done wrong is read first: after a full load and after a swap.
const toErrors = () => document.getElementById('error-summary')?.focus();
document.addEventListener('DOMContentLoaded', toErrors);
document.addEventListener('htmx:afterSettle', toErrors);

// A menu closes when the reader goes on elsewhere.
document.addEventListener('click', (event) => {
  for (const menu of document.querySelectorAll('details.menu[open], details.more[open]')) {
    if (!menu.contains(event.target)) menu.open = false;
  }
});
document.addEventListener('keydown', (event) => {
  if (event.key !== 'Escape') return;
  for (const menu of document.querySelectorAll('details.menu[open], details.more[open]')) {
    menu.open = false;
    menu.querySelector('summary').focus();
  }
});
document.addEventListener('focusout', (event) => {
  const menu = event.target.closest?.('details.menu[open], details.more[open]');
  if (menu && event.relatedTarget && !menu.contains(event.relatedTarget)) menu.open = false;
});

// The code box is reached by one key, which stands beside it, from anywhere but a field.
const codeBox = document.getElementById('find-code');
if (codeBox) {
  const key = document.getElementById('find-key');
  if (/Mac|iPhone|iPad/.test(navigator.platform)) key.textContent = key.dataset.apple;
  key.hidden = false;
  document.addEventListener('keydown', (event) => {
    const asked = (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey && event.key.toLowerCase() === 'k';
    if (!asked || event.target.closest?.('input, select, textarea, [contenteditable]')) return;
    event.preventDefault();
    codeBox.focus();
    codeBox.select();
  });
}

// Bars of a timeline: pointed at or reached by the arrow keys, one says its figures below the picture.
const says = (bar) => {
  const place = bar?.closest('section')?.querySelector('.timeline-says');
  if (place) place.textContent = bar.getAttribute('aria-label');
};
const toBar = (bar) => {
  if (!bar) return;
  bar.closest('.timeline').querySelector('.bar[tabindex="0"]')?.setAttribute('tabindex', '-1');
  bar.setAttribute('tabindex', '0');
  bar.focus();
};
const firstBars = () => {
  for (const timeline of document.querySelectorAll('.timeline')) {
    if (!timeline.querySelector('.bar[tabindex="0"]')) timeline.querySelector('.bar')?.setAttribute('tabindex', '0');
  }
};
document.addEventListener('DOMContentLoaded', firstBars);
document.addEventListener('htmx:afterSettle', firstBars);
document.addEventListener('refreshed', firstBars);
document.addEventListener('pointerover', (event) => says(event.target.closest?.('.timeline .bar')));
document.addEventListener('focusin', (event) => says(event.target.closest?.('.timeline .bar')));
document.addEventListener('keydown', (event) => {
  const bar = event.target.closest?.('.timeline .bar');
  if (!bar || !event.key.startsWith('Arrow')) return;
  event.preventDefault();
  const lanes = [...bar.closest('.timeline').querySelectorAll('.timeline-row > svg')].filter((lane) => lane.querySelector('.bar'));
  const lane = lanes.indexOf(bar.closest('svg'));
  const bars = [...lanes[lane].querySelectorAll('.bar')];
  const at = bars.indexOf(bar);
  if (event.key === 'ArrowRight') toBar(bars[at + 1]);
  if (event.key === 'ArrowLeft') toBar(bars[at - 1]);
  if (event.key === 'ArrowDown') toBar(lanes[lane + 1]?.querySelector('.bar'));
  if (event.key === 'ArrowUp') toBar(lanes[lane - 1]?.querySelector('.bar'));
});
