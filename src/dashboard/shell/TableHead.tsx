/** A table's first row: one column head per name, in the order given. */
export function TableHead({ columns }: { readonly columns: Readonly<Record<string, string>> }) {
  return (
    <thead>
      <tr>
        {Object.values(columns).map((name) => (
          <th key={name} scope="col">
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}
