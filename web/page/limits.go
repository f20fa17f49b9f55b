package page

const FormLimit = 1 << 20 // bytes of a form

const ImportLimit = 8 << 20 // bytes of a document
