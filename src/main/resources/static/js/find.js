'use strict';

// While somebody types, the code box offers what begins so: a combobox with a list that pops up, by the pattern of the
// ARIA Authoring Practices. Without this it is a plain box, and Find leads on or lists what could be meant.
{
  const box = document.getElementById('find-code');
  const form = box?.form;
  let list = null;
  let typing = 0;
  let asked = null;

  const options = () => (list ? [...list.querySelectorAll('[role=option]')] : []);
  const chosen = () => options().find((option) => option.getAttribute('aria-selected') === 'true');
  const say = (text) => (form.querySelector('[role=status]').textContent = text);

  function choose(option) {
    chosen()?.setAttribute('aria-selected', 'false');
    if (option) {
      option.setAttribute('aria-selected', 'true');
      option.scrollIntoView({ block: 'nearest' });
      box.setAttribute('aria-activedescendant', option.id);
    } else {
      box.removeAttribute('aria-activedescendant');
    }
  }

  function close() {
    clearTimeout(typing);
    asked?.abort();
    choose(null);
    list?.remove();
    list = null;
    box.setAttribute('aria-expanded', 'false');
    say('');
  }

  function open(part) {
    close();
    if (part.querySelector('[role=option]')) {
      list = part;
      form.append(list);
      box.setAttribute('aria-expanded', 'true');
    }
    say(part.dataset.says);
  }

  async function ask() {
    const code = box.value.trim();
    if (!code) return close();
    asked?.abort();
    asked = new AbortController();
    try {
      const answer = await fetch(form.dataset.suggestions + '?' + new URLSearchParams({ code }), { signal: asked.signal });
      // Signed out, or not understood: the box still works by itself.
      if (!answer.ok || answer.redirected) return close();
      const part = new DOMParser().parseFromString(await answer.text(), 'text/html').getElementById('find-list');
      if (part && document.activeElement === box) open(part);
    } catch (failed) {
      if (failed.name !== 'AbortError') close();
    }
  }

  const follow = (option) => location.assign(option.dataset.href);

  function press(event) {
    if (event.isComposing) return;
    const all = options();
    const at = all.indexOf(chosen());
    if (event.key === 'ArrowDown' && !list) ask();
    else if (event.key === 'ArrowDown') choose(all[at + 1]);
    else if (event.key === 'ArrowUp' && list) choose(at < 0 ? all[all.length - 1] : all[at - 1]);
    else if (event.key === 'Enter' && chosen()) follow(chosen());
    else if (event.key === 'Escape' && list) close();
    else return;
    event.preventDefault();
  }

  if (form?.dataset.suggestions) {
    box.setAttribute('role', 'combobox');
    box.setAttribute('aria-autocomplete', 'list');
    box.setAttribute('aria-expanded', 'false');
    box.setAttribute('aria-controls', 'find-list');
    box.addEventListener('input', () => {
      clearTimeout(typing);
      typing = setTimeout(ask, 150);
    });
    box.addEventListener('keydown', press);
    // The box keeps the focus, so that typing can go on.
    form.addEventListener('mousedown', (event) => {
      if (list?.contains(event.target)) event.preventDefault();
    });
    form.addEventListener('click', (event) => {
      const option = event.target.closest('[role=option]');
      if (option) follow(option);
    });
    form.addEventListener('focusout', (event) => {
      if (!form.contains(event.relatedTarget)) close();
    });
    window.addEventListener('pageshow', close);
  }
}
