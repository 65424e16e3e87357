'use strict';

// Makes an element like a newer version of itself and keeps what stays of it: whoever reads, has folded something open
// or stands in a field must not notice. Elements are the same by their id, else by what they are about; a row or a link
// that is about something else is never turned into it, so that a key that is pressed meets what was looked at.
const morph = (() => {
  const about = (element) => {
    if (element.id) return element.id;
    switch (element.localName) {
      case 'a':
        return element.getAttribute('href');
      case 'form':
        return element.getAttribute('action');
      case 'input':
      case 'button':
        return `${element.name} ${/^(hidden|checkbox|radio|submit)$/.test(element.type) ? element.getAttribute('value') : ''}`;
      case 'select':
      case 'textarea':
        return element.name;
      case 'li':
        return element.querySelector('a[href]')?.getAttribute('href');
      case 'tr':
        return (element.querySelector('a[href]')?.getAttribute('href') ?? element.querySelector('th')?.textContent);
      case 'dt':
      case 'option':
        return element.textContent;
      case 'section':
        return element.getAttribute('aria-labelledby') ?? element.querySelector(':scope > h2')?.textContent;
      case 'details':
        return element.querySelector('summary')?.textContent.replace(/\d/g, '');
      default:
        return '';
    }
  };
  const key = (node) => (node.nodeType === Node.ELEMENT_NODE ? `${node.localName} ${about(node) ?? ''}` : node.nodeName);

  // What the reader did to an element is theirs: what they folded open, which bar of a picture they are at.
  const isTheirs = (element, attribute) =>
    (attribute === 'open' && element.localName === 'details') || (attribute === 'tabindex' && element.matches('.bar'));

  const like = (old, fresh) => {
    if (old.nodeType !== Node.ELEMENT_NODE) {
      if (old.nodeValue !== fresh.nodeValue) old.nodeValue = fresh.nodeValue;
      return;
    }
    if (old.hasAttribute('data-keep')) return;
    if (old.form && morph.isBegun(old.form)) return;
    if (old.localName === 'form' && morph.isBegun(old)) {
      freshToken(old, fresh);
      return;
    }
    for (const { name, value } of fresh.attributes) {
      if (old.getAttribute(name) !== value && !isTheirs(old, name)) old.setAttribute(name, value);
    }
    for (const { name } of [...old.attributes]) {
      if (!fresh.hasAttribute(name) && !isTheirs(old, name)) old.removeAttribute(name);
    }
    childrenLike(old, fresh);
    if (old.matches('input, select, textarea')) back(old);
  };

  const childrenLike = (old, fresh) => {
    const known = new Map();
    for (const child of old.childNodes) {
      const its = key(child);
      if (!known.has(its)) known.set(its, []);
      known.get(its).push(child);
    }
    const pairs = [...fresh.childNodes].map((child) => [known.get(key(child))?.shift(), child]);
    for (const gone of [...known.values()].flat()) gone.remove();
    let at = old.firstChild;
    for (const [kept, child] of pairs) {
      if (!kept) {
        old.insertBefore(document.importNode(child, true), at);
      } else {
        if (kept === at) at = at.nextSibling;
        else old.insertBefore(kept, at);
        like(kept, child);
      }
    }
  };

  // A field shows what its attributes say once somebody was in it: it doesn't follow them by itself any more.
  const back = (field) => {
    if (field.localName === 'select') {
      for (const option of field.options) option.selected = option.defaultSelected;
      if (field.selectedIndex < 0 && !field.multiple) field.selectedIndex = 0;
    } else if (/^(checkbox|radio)$/.test(field.type)) {
      field.checked = field.defaultChecked;
    } else if (field.type !== 'file' && field.value !== field.defaultValue) {
      field.value = field.defaultValue;
    }
  };

  const freshToken = (old, fresh) => {
    const token = old.querySelector('input[name=_csrf]');
    const newer = fresh.querySelector('input[name=_csrf]');
    if (token && newer) token.value = newer.value;
  };

  const isFilled = (field) => {
    if (field.localName === 'select') {
      const usual = [...field.options].some((option) => option.defaultSelected);
      return [...field.options].some((option, at) => option.selected !== (usual || field.multiple ? option.defaultSelected : at === 0));
    }
    if (/^(checkbox|radio)$/.test(field.type)) return field.checked !== field.defaultChecked;
    if (field.type === 'file') return field.files.length > 0;
    return field.type !== 'hidden' && 'defaultValue' in field && field.value !== field.defaultValue;
  };

  /** Old becomes like fresh, which is of another document. Whoever stands in an element that was moved stands there again. */
  const morph = (old, fresh) => {
    const at = document.activeElement;
    childrenLike(old, fresh);
    if (at !== document.activeElement && at.isConnected && old.contains(at)) at.focus({ preventScroll: true });
  };

  /** Whether somebody has begun to fill the form, or stands in one of its fields. */
  morph.isBegun = (form) => {
    const field = document.activeElement;
    return (
      (field?.form === form && field.matches('input:not([type=checkbox], [type=radio]), select, textarea')) || morph.isFilled(form)
    );
  };
  morph.isFilled = (form) => [...form.elements].some(isFilled);
  return morph;
})();
