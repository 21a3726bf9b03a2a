(() => {
  'use strict';
  const body = document.querySelector('tbody');
  const rows = Array.from(body.rows);
  const search = document.getElementById('search');
  const shown = document.getElementById('shown');
  const missing = document.getElementById('missing');
  const names = new Intl.Collator('en', {numeric: true});
  const texts = rows.map((row) => row.textContent.toLowerCase());

  const show = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    const only = missing !== null && missing.checked;
    let count = 0;
    rows.forEach((row, i) => {
      row.hidden = !words.every((word) => texts[i].includes(word)) || (only && !row.classList.contains('gone'));
      count += row.hidden ? 0 : 1;
    });
    shown.textContent = words.length || only ? `${count} of ${rows.length}` : '';
  };

  const key = (row, column) => {
    const cell = row.cells[column];
    return 'value' in cell.dataset ? Number(cell.dataset.value) : cell.textContent;
  };

  const heads = Array.from(document.querySelectorAll('thead th'));
  heads.forEach((head, column) => {
    const button = head.querySelector('button');
    if (!button) return;
    button.addEventListener('click', () => {
      const down = head.getAttribute('aria-sort') === 'ascending';
      heads.forEach((other) => other.hasAttribute('aria-sort') && other.setAttribute('aria-sort', 'none'));
      head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
      const sorted = rows.slice().sort((a, b) => {
        const x = key(a, column), y = key(b, column);
        const order = typeof x === 'number' ? x - y : names.compare(x, y);
        return down ? -order : order;
      });
      body.replaceChildren(...sorted);
    });
  });
  search.addEventListener('input', show);
  if (missing) missing.addEventListener('change', show);
  show(); // a browser that goes back fills in what stood there
})();
