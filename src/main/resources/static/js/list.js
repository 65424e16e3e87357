'use strict';

// One box ticks every row of a list that can be ticked. Without this each is ticked by itself.
for (const form of document.querySelectorAll('form[data-tick-all]')) {
  const all = form.querySelector('.tick-all');
  const box = all.querySelector('input');
  const rows = () => [...form.elements].filter((element) => element.name === form.dataset.tickAll);
  const look = () => {
    const ticked = rows().filter((row) => row.checked).length;
    box.checked = ticked > 0 && ticked === rows().length;
    box.indeterminate = ticked > 0 && !box.checked;
  };
  all.hidden = false;
  box.addEventListener('change', () => {
    for (const row of rows()) row.checked = box.checked;
  });
  document.addEventListener('change', (event) => {
    if (event.target.form === form && event.target.name === form.dataset.tickAll) look();
  });
  // Going back, the browser ticks what was ticked.
  window.addEventListener('pageshow', look);
}
