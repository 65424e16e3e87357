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
