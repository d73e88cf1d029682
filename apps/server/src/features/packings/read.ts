import { FamilyForm } from '@glandkeeper/contract/family-form'
import { Caution, figureNames, type SiteFamily } from '@glandkeeper/contract/packings'
import { type LibraryFamily, packingFamilies } from '@glandkeeper/engines/packing/families'
import type { PackingFamilyModel, PackingFigureModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'

type FigureRow = PackingFigureModel & { readonly person: { readonly name: string } }
type FamilyRow = PackingFamilyModel & { readonly figures: readonly FigureRow[] }

/** Every kind of packing a site may put in: the library with the site's own word on its figures, then the site's own. */
export async function siteFamilies(read: Pick<Read, 'site'>, siteId: string): Promise<SiteFamily[]> {
  const { packingFamilies: rows } = await read.site.findUniqueOrThrow({
    where: { id: siteId },
    select: {
      packingFamilies: { include: { figures: { include: { person: { select: { name: true } } } } }, orderBy: { name: 'asc' } },
    },
  })
  const byName = new Map(rows.map((row) => [row.name, row]))
  const own = rows.filter((row) => row.isOwn)
  return [
    // A newer library may have taken up a name the site already used: the site's own family goes before it.
    ...packingFamilies.flatMap((family) => {
      const row = byName.get(family.name)
      return row?.isOwn ? [] : [presentLibraryFamily(family, row)]
    }),
    ...own.map(presentOwnFamily),
  ]
}

function presentLibraryFamily(family: LibraryFamily, row: FamilyRow | undefined): SiteFamily {
  const { name, form, description, isOldStock, figures, cautions } = family
  const confirmed = figuresOf(row)
  return {
    name,
    form,
    description,
    isOldStock,
    isOwn: false,
    cautions: [...cautions],
    revision: row?.revision ?? 0,
    figures: Object.fromEntries(
      figureNames.map((figure) => [
        figure,
        {
          value: confirmed.get(figure)?.value ?? figures[figure].value,
          mark: figures[figure].mark,
          confirmed: wordOf(confirmed.get(figure)),
        },
      ]),
    ) as unknown as SiteFamily['figures'],
  }
}

function presentOwnFamily(row: FamilyRow): SiteFamily {
  const confirmed = figuresOf(row)
  return {
    name: row.name,
    form: FamilyForm.parse(row.form),
    description: row.description ?? '',
    isOldStock: false,
    isOwn: true,
    cautions: Caution.array().parse(JSON.parse(row.cautions ?? '[]')),
    revision: row.revision,
    figures: Object.fromEntries(
      figureNames.map((figure) => {
        const { value } = confirmed.get(figure) ?? {}
        return [figure, { value, mark: null, confirmed: wordOf(confirmed.get(figure)) }]
      }),
    ) as unknown as SiteFamily['figures'],
  }
}

function figuresOf(row: FamilyRow | undefined): Map<string, FigureRow> {
  return new Map(row?.figures.map((figure) => [figure.figure, figure]))
}

function wordOf(row: FigureRow | undefined): { by: string; at: string } | null {
  return row ? { by: row.person.name, at: row.confirmedAt.toISOString() } : null
}
